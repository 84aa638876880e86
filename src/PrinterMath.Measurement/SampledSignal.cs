using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Measurement;

/// <summary>A signal sampled at a uniform rate: immutable samples and the sample rate.</summary>
/// <remarks>
/// Sample n is taken at time n / rate. Samples are copied on entry. The unit of the samples is the caller's (full scale = 1 for audio,
/// m/s² for acceleration).
/// </remarks>
/// <example><code>SampledSignal heard = SampledSignal.FromSamples(samples, Frequency.FromHertz(48_000));</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class SampledSignal
{
    private readonly double[] _samples;

    private SampledSignal(double[] samples, double sampleRateHertz)
    {
        _samples = samples;
        SampleRateHertz = sampleRateHertz;
    }

    /// <summary>The sample rate.</summary>
    public Frequency SampleRate => Frequency.FromHertz(SampleRateHertz);

    /// <summary>The sample rate in hertz, for computation.</summary>
    public double SampleRateHertz { get; }

    /// <summary>The samples.</summary>
    public ReadOnlySpan<double> Samples => _samples;

    /// <summary>Number of samples, at least 1.</summary>
    public int Count => _samples.Length;

    /// <summary>Length in time, count / rate.</summary>
    public Duration Duration => Duration.FromSeconds(_samples.Length / SampleRateHertz);

    /// <summary>A signal from samples.</summary>
    /// <param name="samples">At least one finite sample; copied.</param>
    /// <param name="sampleRate">Sample rate, greater than zero.</param>
    /// <returns>The signal.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are no samples, a sample is not finite or the rate is not positive.</exception>
    public static SampledSignal FromSamples(ReadOnlySpan<double> samples, Frequency sampleRate)
    {
        Guard.AtLeast(samples.Length, 1, nameof(samples));
        double rate = Guard.Positive(sampleRate.Hertz, nameof(sampleRate));
        Guard.AllFinite(samples);
        return new SampledSignal(samples.ToArray(), rate);
    }

    /// <summary>A signal from single-precision samples, as audio comes.</summary>
    /// <param name="samples">At least one finite sample; copied.</param>
    /// <param name="sampleRate">Sample rate, greater than zero.</param>
    /// <returns>The signal.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are no samples, a sample is not finite or the rate is not positive.</exception>
    public static SampledSignal FromSamples(ReadOnlySpan<float> samples, Frequency sampleRate)
    {
        Guard.AtLeast(samples.Length, 1, nameof(samples));
        double rate = Guard.Positive(sampleRate.Hertz, nameof(sampleRate));
        double[] copy = new double[samples.Length];
        for (int i = 0; i < copy.Length; i++)
        {
            copy[i] = samples[i];
        }

        Guard.AllFinite(copy, nameof(samples));
        return new SampledSignal(copy, rate);
    }

    /// <summary>Count, rate and duration, invariant.</summary>
    /// <returns>The text.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Count} samples at {SampleRateHertz:G6} Hz ({Count / SampleRateHertz:G4} s)");
}
