namespace PrinterMath.Tension.Tests;

/// <summary>What a telephone does to a recording.</summary>
internal static class Recorder
{
    internal static void Process(double[] x, double rate, bool gate)
    {
        double fast = 1 - Math.Exp(-1 / (0.015 * rate)), slow = 1 - Math.Exp(-1 / (0.1 * rate)), power = 0, held = 0, loudest = 0, open = 1;
        double[] powers = new double[x.Length];
        for (int i = 0; i < x.Length; i++)
        {
            power += ((x[i] * x[i]) - power) * fast;
            powers[i] = power;
            loudest = Math.Max(loudest, power);
        }

        for (int i = 0; i < x.Length; i++)
        {
            held += (powers[i] - held) * slow;
            open += ((powers[i] > 0.01 * loudest ? 1 : 0) - open) * fast;
            x[i] *= gate ? (open < 0.01 ? 0 : open) : Math.Pow(Math.Max(held, 1e-3 * loudest) / loudest, -0.25);
        }
    }
}
