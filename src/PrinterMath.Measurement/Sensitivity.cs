namespace PrinterMath.Measurement;

/// <summary>Sensitivity coefficients ∂f/∂x by five-point central differences on the scale of each input's own uncertainty; zero for exact inputs, which add nothing.</summary>
internal static class Sensitivity
{
    /// <summary>A step of a tenth of u keeps the fourth-order error far below u, and rounding far below the change of f.</summary>
    private const double StepInUncertainties = 0.1;


    internal static double[] Of(MeasurementModel model, IReadOnlyList<BudgetInput> inputs, double[] estimates)
    {
        double[] sensitivities = new double[estimates.Length];
        double[] x = (double[])estimates.Clone();
        for (int i = 0; i < x.Length; i++)
        {
            double u = inputs[i].SiStandardUncertainty;
            if (u == 0)
            {
                continue;
            }

            double h = Math.Max(StepInUncertainties * u, 64 * Math.BitIncrement(Math.Abs(estimates[i])) - (64 * Math.Abs(estimates[i])));
            string where = $"a small change of '{inputs[i].Name}'";
            double near = At(h) - At(-h);
            double far = At(2 * h) - At(-2 * h);
            sensitivities[i] = ((8 * near) - far) / (12 * h);
            x[i] = estimates[i];

            double At(double step)
            {
                x[i] = estimates[i] + step;
                return Evaluate(model, x, where);
            }
        }

        return sensitivities;
    }

    internal static double Evaluate(MeasurementModel model, double[] inputs, string where)
    {
        double value = model(inputs);
        return double.IsFinite(value)
            ? value
            : throw new ArgumentException($"The model gives {value} at {where}; it must be finite there.", nameof(model));
    }
}
