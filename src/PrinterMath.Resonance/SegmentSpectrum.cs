using System.Numerics;

namespace PrinterMath.Resonance;

/// <summary>Transform of one segment: real and imaginary parts of the bins from 0 to half the rate, and room for the windowed samples.</summary>
internal sealed class SegmentSpectrum(int length, int bins)
{
    internal double[] Windowed { get; } = new double[length];

    internal double[] Re { get; } = new double[bins];

    internal double[] Im { get; } = new double[bins];

    internal Complex this[int bin] => new(Re[bin], Im[bin]);

    /// <summary>Adds |X|² to sums of powers.</summary>
    internal void AddPowers(Span<double> sums)
    {
        ReadOnlySpan<double> re = Re.AsSpan(0, sums.Length), im = Im.AsSpan(0, sums.Length);
        int i = 0;
        for (int lanes = Vector<double>.Count; i + lanes <= sums.Length; i += lanes)
        {
            Vector<double> a = new(re[i..]), b = new(im[i..]);
            (new Vector<double>(sums[i..]) + (a * a) + (b * b)).CopyTo(sums[i..]);
        }

        for (; i < sums.Length; i++)
        {
            sums[i] += (re[i] * re[i]) + (im[i] * im[i]);
        }
    }
}
