using PrinterMath.Measurement;
using PrinterMath.Resonance;
using UnitsNet;

namespace CommissioningPass.Pictures;

/// <summary>A power spectrum for the eye.</summary>
/// <param name="Spectrum">The spectrum.</param>
internal sealed record SpectrumCurve(PowerSpectrum Spectrum)
{
    /// <summary>Half the sample rate: nothing is known above.</summary>
    internal double HighestHertz => Spectrum.SampleRate.Hertz / 2;

    /// <summary>Welch's estimate from a start on, in segments just long enough for the resolution, if the signal is.</summary>
    internal static SpectrumCurve Of(SampledSignal signal, Duration start, double resolutionHertz)
    {
        int from = Math.Clamp((int)(start.Seconds * signal.SampleRateHertz), 0, signal.Count - 2);
        int length = 2;
        while (length * 2 <= signal.Count - from && signal.SampleRateHertz / length > resolutionHertz)
        {
            length *= 2;
        }

        var part = SampledSignal.FromSamples(signal.Samples[from..], signal.SampleRate);
        return new SpectrumCurve(Welch.Estimate(part, new WelchOptions { SegmentLength = length }));
    }

    /// <summary>The largest density in each of many narrow columns, so that no peak is lost; the first two bins hold what drifts.</summary>
    internal IReadOnlyList<(double Hertz, double Density)> UpTo(double hertz)
    {
        const int Columns = 300;
        double[] densities = Spectrum.Densities.ToArray();
        return
        [
            .. densities.Select((density, i) => (Hertz: Spectrum.FrequencyAt(i).Hertz, Density: density))
                .Skip(2)
                .Where(point => point.Hertz <= hertz)
                .GroupBy(point => (int)(point.Hertz / hertz * Columns))
                .Select(group => group.MaxBy(point => point.Density)),
        ];
    }
}
