namespace PrinterMath.Resonance;

/// <summary>Brings the sum of amplitudes to one within rounding.</summary>
internal static class SequenceSum
{
    internal static double Of(ReadOnlySpan<double> amplitudes)
    {
        double sum = 0;
        foreach (double amplitude in amplitudes)
        {
            sum += amplitude;
        }

        return sum;
    }

    /// <summary>Gives what is missing, a few units of rounding, to the amplitude of largest size.</summary>
    internal static double[] ToOne(double[] amplitudes)
    {
        int largest = 0;
        for (int i = 1; i < amplitudes.Length; i++)
        {
            largest = Math.Abs(amplitudes[i]) > Math.Abs(amplitudes[largest]) ? i : largest;
        }

        for (int pass = 0; pass < 4; pass++)
        {
            amplitudes[largest] += 1 - Of(amplitudes);
        }

        return amplitudes;
    }
}
