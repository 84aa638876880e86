namespace PrinterMath.Measurement;

/// <summary>The second-order terms of the law of propagation, for independent inputs, from derivatives found on the scale of each uncertainty.</summary>
internal static class SecondOrder
{
    /// <summary>Step in units of u: third differences need a wide base, and a model that second order suits is smooth over it.</summary>
    private const double Step = 0.5;

    /// <summary>½ Σ f″ᵢᵢ uᵢ², by which the mean of the result differs from the result at the means. JCGM 100:2008, F.2.4.4 note.</summary>
    internal static double Shift(MeasurementModel model, double[] estimates, double[] steps)
    {
        double shift = 0;
        for (int i = 0; i < estimates.Length; i++)
        {
            shift += steps[i] > 0 ? Second(model, estimates, steps, i) / (2 * Step * Step) : 0;
        }

        return shift;
    }

    /// <summary>Σᵢ Σⱼ [½ (f″ᵢⱼ)² + f′ᵢ f‴ᵢⱼⱼ] uᵢ² uⱼ². JCGM 100:2008, 5.1.2, note.</summary>
    internal static double Variance(MeasurementModel model, double[] estimates, double[] steps)
    {
        double sum = 0;
        for (int i = 0; i < estimates.Length; i++)
        {
            for (int j = 0; j < estimates.Length; j++)
            {
                if (steps[i] > 0 && steps[j] > 0)
                {
                    double mixed = i == j ? Second(model, estimates, steps, i) : Mixed(model, estimates, steps, i, j);
                    double first = First(model, estimates, steps, i);
                    double third = i == j ? Third(model, estimates, steps, i) : ThirdMixed(model, estimates, steps, i, j);
                    sum += (mixed * mixed / (2 * Math.Pow(Step, 4))) + (first * third / Math.Pow(Step, 4));
                }
            }
        }

        return sum;
    }

    private static double First(MeasurementModel f, double[] x, double[] h, int i) => (At(f, x, h, i, 1) - At(f, x, h, i, -1)) / 2;

    private static double Second(MeasurementModel f, double[] x, double[] h, int i) => At(f, x, h, i, 1) - (2 * At(f, x, h, i, 0)) + At(f, x, h, i, -1);

    private static double Third(MeasurementModel f, double[] x, double[] h, int i) =>
        (At(f, x, h, i, 2) - (2 * At(f, x, h, i, 1)) + (2 * At(f, x, h, i, -1)) - At(f, x, h, i, -2)) / 2;

    private static double Mixed(MeasurementModel f, double[] x, double[] h, int i, int j) =>
        (At(f, x, h, i, 1, j, 1) - At(f, x, h, i, 1, j, -1) - At(f, x, h, i, -1, j, 1) + At(f, x, h, i, -1, j, -1)) / 4;

    private static double ThirdMixed(MeasurementModel f, double[] x, double[] h, int i, int j) =>
        (At(f, x, h, i, 1, j, 1) - (2 * At(f, x, h, i, 1)) + At(f, x, h, i, 1, j, -1)
        - At(f, x, h, i, -1, j, 1) + (2 * At(f, x, h, i, -1)) - At(f, x, h, i, -1, j, -1)) / 2;

    private static double At(MeasurementModel model, double[] x, double[] steps, int i, int times, int j = 0, int timesOther = 0)
    {
        double[] moved = (double[])x.Clone();
        moved[i] += times * Step * steps[i];
        moved[j] += timesOther * Step * steps[j];
        return Sensitivity.Evaluate(model, moved, "a change by the uncertainty of its inputs");
    }
}
