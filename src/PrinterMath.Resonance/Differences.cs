namespace PrinterMath.Resonance;

/// <summary>Slopes by central differences, for well-scaled equations.</summary>
internal static class Differences
{
    private const double Step = 1e-6;

    internal static NewtonIteration.Equations SlopesOf(Action<double[], double[]> equations) => (x, values, slopes) =>
    {
        equations(x, values);
        double[] ahead = new double[values.Length], behind = new double[values.Length];
        for (int j = 0; j < x.Length; j++)
        {
            double kept = x[j];
            x[j] = kept + Step;
            equations(x, ahead);
            x[j] = kept - Step;
            equations(x, behind);
            x[j] = kept;
            for (int i = 0; i < values.Length; i++)
            {
                slopes[i, j] = (ahead[i] - behind[i]) / (2 * Step);
            }
        }
    };
}
