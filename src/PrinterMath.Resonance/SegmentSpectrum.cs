using System.Numerics;

namespace PrinterMath.Resonance;

/// <summary>Transform of one segment: real and imaginary parts of the bins from 0 to half the rate, and room for the windowed samples.</summary>
internal sealed class SegmentSpectrum(int length, int bins)
{
    internal double[] Windowed { get; } = new double[length];

    internal double[] Re { get; } = new double[bins];

    internal double[] Im { get; } = new double[bins];

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

    /// <summary>Adds conj(X)·Y, Y the other transform, to sums of products.</summary>
    internal void AddProducts(SegmentSpectrum other, Span<double> real, Span<double> imaginary)
    {
        ReadOnlySpan<double> re = Re.AsSpan(0, real.Length), im = Im.AsSpan(0, real.Length);
        ReadOnlySpan<double> otherRe = other.Re.AsSpan(0, real.Length), otherIm = other.Im.AsSpan(0, real.Length);
        for (int i = 0; i < real.Length; i++)
        {
            real[i] += (re[i] * otherRe[i]) + (im[i] * otherIm[i]);
            imaginary[i] += (re[i] * otherIm[i]) - (im[i] * otherRe[i]);
        }
    }
}
