namespace PrinterMath.Resonance;

/// <summary>Impulses for a mode of period 1 s: amplitudes and times in undamped periods.</summary>
internal static class SequenceDesign
{
    internal const double LargestDamping = 0.3;
    private const double ContinuationStep = 0.01;

    /// <summary>A_i ∝ C(k, i)·Kⁱ at i·T_d/2 with K = exp(−πζ/√(1 − ζ²)): k zero-vibration pairs in a row. Singer, Seering 1990.</summary>
    internal static (double[] Amplitudes, double[] Times) ZeroVibration(double dampingRatio, int pairs)
    {
        double root = Math.Sqrt(1 - (dampingRatio * dampingRatio));
        double ratio = Math.Exp(-Math.PI * dampingRatio / root);
        double[] amplitudes = new double[pairs + 1];
        double[] times = new double[pairs + 1];
        double binomial = 1;
        double total = Math.Pow(1 + ratio, pairs);
        for (int i = 0; i <= pairs; i++)
        {
            amplitudes[i] = binomial * Math.Pow(ratio, i) / total;
            times[i] = i / (2 * root);
            binomial = binomial * (pairs - i) / (i + 1);
        }

        return (amplitudes, times);
    }

    /// <summary>
    /// Undamped: (1 + V)/4, (1 − V)/2, (1 + V)/4 at 0, T/2, T. Damped: C = S = 0 at a frequency below and one above, residual V at the design frequency, last
    /// impulse at T_d; Newton's method, followed from ζ = 0 in steps of 0.01.
    /// </summary>
    internal static (double[] Amplitudes, double[] Times) ExtraInsensitive(double dampingRatio, double tolerance)
    {
        double below = Math.Acos(-(1 - tolerance) / (1 + tolerance)) / Math.PI;
        double[] unknowns = [(1 + tolerance) / 4, (1 + tolerance) / 4, 0.5, below, 2 - below];
        int steps = (int)Math.Ceiling(dampingRatio / ContinuationStep);
        for (int step = 1; step <= steps; step++)
        {
            double zeta = dampingRatio * step / steps;
            NewtonIteration.Solve((x, f) => Constraints(x, zeta, tolerance, f), unknowns);
        }

        return (
            [unknowns[0], 1 - unknowns[0] - unknowns[1], unknowns[1]],
            [0, unknowns[2], 1 / Math.Sqrt(1 - (dampingRatio * dampingRatio))]);
    }

    private static void Constraints(double[] x, double zeta, double tolerance, double[] f)
    {
        double[] amplitudes = [x[0], 1 - x[0] - x[1], x[1]];
        double[] times = [0, x[2], 1 / Math.Sqrt(1 - (zeta * zeta))];
        (f[0], f[1]) = Residual.Components(amplitudes, times, 2 * Math.PI * x[3], zeta);
        (f[2], f[3]) = Residual.Components(amplitudes, times, 2 * Math.PI * x[4], zeta);
        f[4] = Residual.Ratio(amplitudes, times, 2 * Math.PI, zeta) - tolerance;
    }
}
