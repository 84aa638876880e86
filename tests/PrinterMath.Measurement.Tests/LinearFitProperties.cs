using FsCheck.Xunit;

namespace PrinterMath.Measurement.Tests;

public class LinearFitProperties
{
    // Lattice data: y is exact in doubles, so the planted coefficients come back to rounding; 1e-12 allows κ up to a few hundred units.
    [Property(Arbitrary = [typeof(ReadingArbitraries)])]
    public bool ExactDataAreRecovered(PlantedModel model)
    {
        LinearFit fit = Fit(model, model.Exact);
        return !Determined(fit)
            || (Close(fit.Coefficients, model.Coefficients, 1e-12)
                && fit.Readings.All(r => Math.Abs(r.Residual) < 1e-12)
                && fit.Findings.Any(f => f.Code == "fit.scatter.none")
                && fit.Readings.All(r => r.StandardizedResidual is null && r.StudentizedResidual is null));
    }

    [Property(Arbitrary = [typeof(ReadingArbitraries)])]
    public bool ResidualsAreOrthogonalToTheColumns(PlantedModel model)
    {
        LinearFit fit = Fit(model, model.Noisy);
        if (!Determined(fit))
        {
            return true;
        }

        double[] e = [.. fit.Readings.Select(r => r.Residual)];
        double size = Math.Sqrt(e.Sum(x => x * x));
        bool orthogonal = Math.Abs(e.Sum()) <= 1e-13 * size * Math.Sqrt(model.Rows);
        for (int j = 0; j < model.Columns; j++)
        {
            double[] column = Column(model, j);
            orthogonal &= Math.Abs(e.Zip(column, (x, a) => x * a).Sum()) <= 1e-13 * size * Math.Sqrt(column.Sum(a => a * a)) * model.Rows;
        }

        return orthogonal && Math.Abs(fit.Readings.Sum(r => r.Leverage) - fit.CoefficientCount) < 1e-11;
    }

    [Property(Arbitrary = [typeof(ReadingArbitraries)])]
    public bool ScalingAColumnScalesItsCoefficientAlone(PlantedModel model)
    {
        LinearFit fit = Fit(model, model.Noisy);
        double[] scaled = [.. model.Design.Select((x, i) => i % model.Columns == 0 ? 3e4 * x : x)];
        LinearFit other = LinearLeastSquares.Fit(scaled, model.Columns, model.Noisy);
        return Determined(fit) == Determined(other)
            && (!Determined(fit)
                || (Close(fit.Coefficients, [.. other.Coefficients.Select((b, i) => i == 1 ? 3e4 * b : b)], 1e-11)
                    && Close(fit.StandardErrors, [.. other.StandardErrors.Select((b, i) => i == 1 ? 3e4 * b : b)], 1e-11)
                    && Math.Abs(fit.ConditionNumber - other.ConditionNumber) < 1e-9 * fit.ConditionNumber));
    }

    [Property(Arbitrary = [typeof(ReadingArbitraries)])]
    public bool ShiftingAColumnMovesTheInterceptAlone(PlantedModel model)
    {
        LinearFit fit = Fit(model, model.Noisy);
        LinearFit other = LinearLeastSquares.Fit([.. model.Design.Select((x, i) => i % model.Columns == 0 ? x + 1024 : x)], model.Columns, model.Noisy);
        return Determined(fit) == Determined(other)
            && (!Determined(fit)
                || (Close([.. fit.Coefficients.Skip(1)], [.. other.Coefficients.Skip(1)], 1e-11)
                    && Math.Abs(fit.Coefficients[0] - other.Coefficients[0] - (1024 * other.Coefficients[1])) < 1e-9
                    && Close([.. fit.StandardErrors.Skip(1)], [.. other.StandardErrors.Skip(1)], 1e-11)));
    }

    [Property(Arbitrary = [typeof(ReadingArbitraries)])]
    public bool OrderOfReadingsDoesNotMatter(PlantedModel model)
    {
        LinearFit fit = Fit(model, model.Noisy);
        double[] reversed = [.. Enumerable.Range(0, model.Rows).Reverse().SelectMany(i => model.Design.Skip(i * model.Columns).Take(model.Columns))];
        LinearFit other = LinearLeastSquares.Fit(reversed, model.Columns, [.. Enumerable.Reverse(model.Noisy)]);
        return Determined(fit) == Determined(other)
            && (!Determined(fit)
                || (Close(fit.Coefficients, other.Coefficients, 1e-12)
                    && Close([.. fit.Readings.Select(r => r.Leverage)], [.. other.Readings.Reverse().Select(r => r.Leverage)], 1e-12)));
    }

    // The shortcuts must equal what they abbreviate: the model fitted again without the reading.
    [Property(Arbitrary = [typeof(ReadingArbitraries)], MaxTest = 50)]
    public bool LeavingOneOutEqualsFittingWithoutIt(PlantedModel model)
    {
        LinearFit fit = Fit(model, model.Noisy);
        if (!Determined(fit) || fit.Readings[0].LeaveOneOutResidual is not double without)
        {
            return true;
        }

        LinearFit rest = LinearLeastSquares.Fit(model.Design.AsSpan(model.Columns), model.Columns, model.Noisy.AsSpan(1));
        if (!Determined(rest))
        {
            return true;
        }

        FittedReading first = fit.Readings[0];
        LinearPrediction predicted = rest.Predict(model.Design.AsSpan(0, model.Columns));
        double t = (first.Response - predicted.Value)
            / Math.Sqrt(Math.Pow(rest.ResidualStandardDeviation, 2) + Math.Pow(predicted.StandardUncertainty, 2));
        double moved = fit.Readings.Select((r, i) => r.FittedValue - rest.Predict(model.Design.AsSpan(i * model.Columns, model.Columns)).Value).Sum(d => d * d);
        double cook = moved / (fit.CoefficientCount * Math.Pow(fit.ResidualStandardDeviation, 2));
        return Near(first.Response - predicted.Value, without, 1e-9)
            && (first.StudentizedResidual is not double studentized || Near(t, studentized, 1e-8))
            && (first.CookDistance is not double distance || Near(cook, distance, 1e-8));
    }

    private static LinearFit Fit(PlantedModel model, double[] response) => LinearLeastSquares.Fit(model.Design, model.Columns, response);

    private static bool Determined(LinearFit fit) => fit.TryGetCoefficients(out _);

    private static double[] Column(PlantedModel model, int j) => [.. Enumerable.Range(0, model.Rows).Select(i => model.Design[(i * model.Columns) + j])];

    private static bool Close(IReadOnlyList<double> one, IReadOnlyList<double> other, double tolerance) =>
        one.Zip(other, (a, b) => Near(a, b, tolerance)).All(x => x);

    private static bool Near(double a, double b, double tolerance) => Math.Abs(a - b) <= tolerance * Math.Max(1, Math.Abs(a));
}
