using PrinterMath.Measurement;

namespace PrinterMath.Extrusion;

/// <summary>Feed ratio r = Σ c·m/Σ c² and the pieces of its uncertainty.</summary>
internal sealed class FeedModel
{
    private readonly BudgetInput[] _inputs;
    private readonly double[] _sensitivities;

    private FeedModel(double ratio, double deviation, BudgetInput[] inputs, double[] sensitivities)
    {
        Ratio = ratio;
        Deviation = deviation;
        _inputs = inputs;
        _sensitivities = sensitivities;
    }

    internal double Ratio { get; }

    /// <summary>Residual standard deviation in metres.</summary>
    internal double Deviation { get; }

    internal static FeedModel Fit(double[] commanded, double[] measured, FeedCalibrationOptions options)
    {
        int n = commanded.Length;
        double squares = 0, sum = 0, products = 0;
        for (int i = 0; i < n; i++)
        {
            squares += commanded[i] * commanded[i];
            sum += commanded[i];
            products += commanded[i] * measured[i];
        }

        double ratio = products / squares, residuals = 0;
        for (int i = 0; i < n; i++)
        {
            double e = measured[i] - (ratio * commanded[i]);
            residuals += e * e;
        }

        // Below this the residuals are the rounding of their own difference.
        double deviation = Math.Sqrt(residuals / (n - 1));
        deviation = deviation > 1e-13 * sum * ratio / n ? deviation : 0;
        double common = sum / squares;
        List<BudgetInput> inputs = [];
        List<double> sensitivities = [];
        if (deviation > 0)
        {
            inputs.Add(BudgetInput.Repeated("repeated trials", Measured<double>.FromSi(ratio, deviation / Math.Sqrt(squares), n - 1), n));
            sensitivities.Add(1);
        }

        Add("step of the ruler", options.Resolution is { } step ? Guard.Positive(step.Meters, nameof(options.Resolution)) / Math.Sqrt(12) : 0, common);
        Add("ruler", options.RulerUncertainty is { } ruler ? Guard.Positive(ruler.Meters, nameof(options.RulerUncertainty)) : 0, common);
        Add("commanded length", options.CommandedUncertainty is { } u ? Guard.Positive(u.Meters, nameof(options.CommandedUncertainty)) : 0, -ratio * common);
        return new FeedModel(ratio, deviation, [.. inputs], [.. sensitivities]);

        void Add(string name, double u, double sensitivity)
        {
            if (u > 0)
            {
                inputs.Add(BudgetInput.Of(name, Measured<UnitsNet.Length>.FromSi(0, u)));
                sensitivities.Add(sensitivity);
            }
        }
    }

    internal UncertaintyBudget<double> Budget(double value, double derivative) =>
        Propagation.FirstOrder<double>(value, _inputs, [.. _sensitivities.Select(c => c * derivative)]);

    /// <summary>present/r.</summary>
    internal UncertaintyBudget<T> Scaled<T>(double present)
        where T : struct =>
        Propagation.FirstOrder<T>(present / Ratio, _inputs, [.. _sensitivities.Select(c => -c * present / (Ratio * Ratio))]);

    internal bool TryGetTrialsFor(double wanted, int trials, out int needed)
    {
        double repeated = 0, common = 0;
        for (int i = 0; i < _inputs.Length; i++)
        {
            double u = _sensitivities[i] * _inputs[i].SiStandardUncertainty;
            (repeated, common) = _inputs[i].Observations is null ? (repeated, common + (u * u)) : (repeated + (u * u), common);
        }

        double left = (wanted * wanted) - common;
        double count = left > 0 ? Math.Max(2, Math.Ceiling(repeated * trials / left * (1 - 1e-12))) : double.PositiveInfinity;
        needed = count < int.MaxValue ? (int)count : 0;
        return needed > 0;
    }
}
