using System.Numerics;

namespace PrinterMath.Resonance;

/// <summary>Frequencies of a response in hertz, its complex values there, and, where known, coherences with their averages.</summary>
internal sealed record ResponseLines(double[] Frequencies, Complex[] Values, double[] Coherences, double? Averages, ResponseEstimator Estimator)
{
    /// <summary>The spectra that the values were estimated from; null when they were given.</summary>
    internal PowerSpectrum? Source { get; init; }

    /// <summary>How often the values were multiplied by jω since they were estimated or given; negative when divided.</summary>
    internal int Derivatives { get; init; }

    /// <summary>Values from elsewhere, checked and copied.</summary>
    internal static ResponseLines Given(ReadOnlySpan<double> frequencies, ReadOnlySpan<Complex> values)
    {
        Check(frequencies, values);
        return new ResponseLines(frequencies.ToArray(), values.ToArray(), [], null, ResponseEstimator.H1);
    }

    /// <summary>Values and coherences from elsewhere, checked and copied.</summary>
    internal static ResponseLines Given(
        ReadOnlySpan<double> frequencies, ReadOnlySpan<Complex> values, ReadOnlySpan<double> coherences, double effectiveAverages)
    {
        Check(frequencies, values);
        if (coherences.Length != values.Length)
        {
            throw Guard.Refused(nameof(coherences), $"{values.Length} values need as many coherences; there are {coherences.Length}.");
        }

        foreach (double coherence in coherences)
        {
            Guard.Between(coherence, 0, 1, nameof(coherences));
        }

        double averages = Guard.Finite(effectiveAverages) > 1 ? effectiveAverages : throw Guard.Out(nameof(effectiveAverages), effectiveAverages, "more than 1 average");
        return new ResponseLines(frequencies.ToArray(), values.ToArray(), coherences.ToArray(), averages, ResponseEstimator.H1);
    }

    /// <summary>H from the spectra of input and output; 0 where the input, or what both share, is nothing.</summary>
    internal static ResponseLines Of(CrossSpectrum spectra, ResponseEstimator estimator)
    {
        if (!Enum.IsDefined(estimator))
        {
            throw Guard.Out(nameof(estimator), estimator, "one of the named estimators");
        }

        if (spectra.Averages < 2)
        {
            throw Guard.Refused("options", $"The signals hold one segment of {spectra.First.Segments.Window.Length} samples, and one segment has no coherence: shorten the segments.");
        }

        double[] coherences = spectra.Coherences.ToArray();
        var values = new Complex[spectra.Count];
        double[] frequencies = new double[spectra.Count];
        for (int i = 0; i < values.Length; i++)
        {
            frequencies[i] = i * spectra.First.ResolutionHertz;
            double input = spectra.First.Densities[i], output = spectra.Second.Densities[i];
            Complex cross = spectra.Densities[i];
            values[i] = coherences[i] == 0 ? Complex.Zero : estimator switch
            {
                ResponseEstimator.H1 => cross / input,
                ResponseEstimator.H2 => output / Complex.Conjugate(cross),
                _ => Complex.FromPolarCoordinates(Math.Sqrt(output / input), cross.Phase),
            };
        }

        return new ResponseLines(frequencies, values, coherences, spectra.EffectiveAverages, estimator) { Source = spectra.First };
    }

    /// <summary>The values over jω: from acceleration to velocity, or from velocity to displacement. Zero frequency, where this has no answer, is left out.</summary>
    internal ResponseLines Integrated()
    {
        int skipped = Frequencies[0] == 0 ? 1 : 0;
        return this with
        {
            Frequencies = Frequencies[skipped..],
            Values = [.. Values.Skip(skipped).Zip(Frequencies.Skip(skipped), (value, hertz) => value / new Complex(0, 2 * Math.PI * hertz))],
            Coherences = Coherences.Length > 0 ? Coherences[skipped..] : [],
            Derivatives = Derivatives - 1,
        };
    }

    /// <summary>The values times jω.</summary>
    internal ResponseLines Differentiated() => this with
    {
        Values = [.. Values.Zip(Frequencies, (value, hertz) => value * new Complex(0, 2 * Math.PI * hertz))],
        Derivatives = Derivatives + 1,
    };

    /// <summary>The values in the form in which they were estimated or given.</summary>
    internal ResponseLines AsEstimated() => Derivatives > 0 ? Integrated().AsEstimated() : Derivatives < 0 ? Differentiated().AsEstimated() : this;

    private static void Check(ReadOnlySpan<double> frequencies, ReadOnlySpan<Complex> values)
    {
        Guard.AtLeast(values.Length, 1, nameof(values));
        if (frequencies.Length != values.Length)
        {
            throw Guard.Refused(nameof(frequencies), $"{values.Length} values need as many frequencies; there are {frequencies.Length}.");
        }

        for (int i = 0; i < values.Length; i++)
        {
            Guard.NonNegative(frequencies[i], nameof(frequencies));
            Guard.Finite(values[i].Real, nameof(values));
            Guard.Finite(values[i].Imaginary, nameof(values));
            if (i > 0 && frequencies[i] <= frequencies[i - 1])
            {
                throw Guard.Refused(nameof(frequencies), FormattableString.Invariant($"Frequencies must rise; {frequencies[i]} Hz follows {frequencies[i - 1]} Hz."));
            }
        }
    }
}
