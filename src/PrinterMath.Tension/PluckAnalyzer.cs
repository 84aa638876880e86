using System.Buffers;
using PrinterMath.Measurement;

namespace PrinterMath.Tension;

/// <summary>One pluck from samples to string: spectrum, peaks, steady lines out, candidates, decision, fit, glide.</summary>
internal static class PluckAnalyzer
{
    internal const double LowestLine = 12;
    private const double HighestLine = 5000;
    private const double LeastPeriods = 8;
    private const double LeastSeconds = 0.05;
    private const double DullRate = 4400;
    private const double AttackSeconds = 0.05;
    internal const double SameString = 0.03;
    private const int MostPeaks = 48;
    private const int MostFollowed = 16;

    /// <summary>Windows tried after the first, as ratios to it.</summary>
    private static readonly double[] OtherWindows = [4, 2, 0.5, 0.25, 0.125];

    /// <summary>Highest frequency at which partials are looked for.</summary>
    internal static double HighestPartial(double sampleRate) => Math.Min(HighestLine, 0.4 * sampleRate / PluckDecimator.FactorFor(sampleRate));

    /// <summary>What a pluck says in its own window or, where that leaves the pitch open, in the first longer or shorter one that decides it.</summary>
    /// <remarks>A window that is much longer than the pluck rings drowns it in noise and hum, one that a recorder's gain cut short resolves too little.</remarks>
    internal static PluckAnalysis Analyze(ReadOnlySpan<double> samples, double sampleRate, double mean, PluckStretch stretch, QuietLines quiet, PluckRange range)
    {
        PluckAnalysis own = Listen(samples, sampleRate, mean, stretch, quiet, range, null);
        if (own.Blocked?.Code is not (PluckFindings.NoPitch or PluckFindings.OctaveUndecided))
        {
            return own;
        }

        int last = stretch.Count;
        foreach (double factor in OtherWindows)
        {
            int count = Math.Min((int)(factor * stretch.Count), stretch.Room);
            if (count != last && Listen(samples, sampleRate, mean, stretch with { Count = count }, quiet, range, own) is { Blocked: null } other
                && Math.Abs(other.FirstPartial - own.Behind) > SameString * own.Behind)
            {
                return other;
            }

            last = count;
        }

        return own;
    }

    private static PluckAnalysis Listen(
        ReadOnlySpan<double> samples, double sampleRate, double mean, PluckStretch stretch, QuietLines quiet, PluckRange range, PluckAnalysis? before)
    {
        double seconds = stretch.Count / sampleRate;
        if (seconds < LeastSeconds || LeastPeriods / seconds >= range.Highest)
        {
            return Stop(PluckSentences.TooShort(seconds, LeastPeriods / range.Highest));
        }

        int factor = PluckDecimator.FactorFor(sampleRate), count = stretch.Count / factor;
        double[] rented = ArrayPool<double>.Shared.Rent(count);
        PluckDecimator.Take(samples, stretch.Start, factor, mean, rented.AsSpan(0, count));
        PluckAnalysis analysis = Hear(rented.AsSpan(0, count), stretch, quiet, range, sampleRate, before);
        ArrayPool<double>.Shared.Return(rented);
        return analysis;

        PluckAnalysis Stop(Finding finding) => new() { Stretch = stretch, SampleRate = sampleRate, Blocked = finding };
    }

    private static PluckAnalysis Hear(ReadOnlySpan<double> x, PluckStretch stretch, QuietLines quiet, PluckRange range, double sampleRate, PluckAnalysis? before)
    {
        double rate = sampleRate / PluckDecimator.FactorFor(sampleRate);
        bool isSteady = PluckDecision.IsSteady(x, rate);
        int later = isSteady || stretch.Start == 0 ? LateOnset(x, rate) : 0, skipped = later * PluckDecimator.FactorFor(sampleRate);
        if (later > 0)
        {
            return Hear(x[later..], stretch with { Start = stretch.Start + skipped, Count = stretch.Count - skipped }, quiet, range, sampleRate, before);
        }

        if (isSteady)
        {
            return Stop(PluckSentences.Steady(stretch.Count / sampleRate), []);
        }

        int attack = Attack(x, rate);
        x = x[Math.Max(0, attack - (int)(0.002 * rate))..];
        double lowestLine = rate / x.Length;
        using PluckSpectrum spectrum = PluckSpectrum.Of(x, rate, HighestPartial(sampleRate));
        List<SpectralPeak> peaks = PeakFinder.Find(spectrum, LowestLine, MostPeaks);
        List<double> steady = RemoveSteady(peaks, spectrum, x, rate, quiet);
        CandidateSearch search = new(peaks, spectrum.Resolution, HighestPartial(sampleRate));
        (StringMatch? match, Finding? blocked, double behind, double noOctave) = PluckDecision.Judge(
            search.Rank(Math.Max(range.Lowest, LeastPeriods * lowestLine), range.Highest),
            peaks,
            search,
            new OctaveTest(spectrum, steady, HighestPartial(sampleRate)),
            range with { Lowest = Math.Max(range.Lowest, LeastPeriods / 2 * lowestLine) },
            range.Lowest,
            before is null,
            before?.NoOctave ?? 0);
        if (match is null)
        {
            return Stop(blocked!, steady) with { Behind = behind, NoOctave = noOctave };
        }

        int count = match.Numbers.Length;
        double[] frequencies = new double[count], noise = new double[count];
        for (int i = 0; i < count; i++)
        {
            SpectralPeak peak = peaks[match.Peaks[i]];
            frequencies[i] = peak.Frequency;
            noise[i] = 0.55 * spectrum.Resolution / Math.Sqrt(2 * peak.Ratio);
        }

        int[] strongest = [.. Enumerable.Range(0, count).OrderByDescending(i => peaks[match.Peaks[i]].Ratio * match.Numbers[i]).Take(MostFollowed).Order()];
        double[] followed = [.. strongest.Select(i => frequencies[i])];
        int begin = Attack(x, rate) + (int)(0.002 * rate);
        PartialTracker track = PartialTracker.Follow(x[begin..], rate, followed, match.Model.F0);
        DecayFit decays = DecayFit.Of(track, followed, steady, rate);
        for (int k = 0; k < strongest.Length; k++)
        {
            if (decays.Uncertainties[k] > 0)
            {
                frequencies[strongest[k]] = decays.Frequencies[k];
                noise[strongest[k]] = decays.Uncertainties[k];
            }
        }

        Widen(noise, strongest, decays.Widths, spectrum.Resolution);
        StiffStringFit fit = StiffStringFit.Of(match.Numbers, frequencies, noise);
        return new PluckAnalysis
        {
            Stretch = stretch,
            SampleRate = sampleRate,
            Fit = fit,
            Glide = GlideFit.Of(track, followed, decays.Frequencies, decays.Noise),
            Partials = PartialList.Of(match, peaks, frequencies, fit, strongest, track),
            SignalToNoise = PartialList.SignalToNoise(match, peaks, spectrum),
            LogOdds = match.LogOdds,
            SteadyLines = steady,
            Beat = BeatSearch.Find(track, followed, fit.Model.F0),
        };

        PluckAnalysis Stop(Finding finding, IReadOnlyList<double> lines) =>
            new() { Stretch = stretch, SampleRate = sampleRate, Blocked = finding, SteadyLines = lines };
    }

    /// <summary>A partial that was not followed is as wide as those that were: its peak is known the less well.</summary>
    private static void Widen(double[] noise, int[] followed, double[] widths, double resolution)
    {
        double widest = followed.Length == noise.Length ? 0 : widths.Max();
        for (int i = 0; i < noise.Length && widest > 0; i++)
        {
            noise[i] *= Array.IndexOf(followed, i) < 0 ? Math.Max(1, widest / resolution) : 1;
        }
    }

    /// <summary>The first sample that comes to half of the largest of the first 50 ms: the onset is known to the 40 ms over which its level was averaged.</summary>
    private static int Attack(ReadOnlySpan<double> x, double rate)
    {
        ReadOnlySpan<double> attack = x[..Math.Min(x.Length / 3, (int)(AttackSeconds * rate))];
        double largest = 0;
        foreach (double v in attack)
        {
            largest = Math.Max(largest, Math.Abs(v));
        }

        int first = 0;
        while (Math.Abs(attack[first]) < largest / 2)
        {
            first++;
        }

        return first;
    }

    /// <summary>Where a pluck begins that is hidden under hiss: the onset in the part of the sound below 2 kHz; 0 when there is none.</summary>
    private static int LateOnset(ReadOnlySpan<double> x, double rate)
    {
        int factor = Math.Max(1, (int)(rate / DullRate));
        double[] dull = new double[x.Length / factor];
        PluckDecimator.Take(x, 0, factor, 0, dull);
        List<PluckStretch> found = OnsetDetector.Find(PluckEnvelope.Of(dull, rate / factor), rate / factor, dull.Length * factor / rate, []);
        int start = found.Count == 0 ? 0 : found[0].Start * factor;
        return x.Length - start > LeastSeconds * rate ? start : 0;
    }

    private static List<double> RemoveSteady(List<SpectralPeak> peaks, PluckSpectrum spectrum, ReadOnlySpan<double> x, double rate, QuietLines quiet)
    {
        List<double> steady = [];
        for (int i = peaks.Count - 1; i >= 0; i--)
        {
            SpectralPeak peak = peaks[i];
            if (SteadyLines.IsBackground(peak, spectrum.Resolution, (double)x.Length * x.Length, quiet)
                || (SteadyLines.IsMains(peak.Frequency, spectrum.Resolution) && SteadyLines.Persistence(x, rate, peak.Frequency) is > 0.7 and < 1.4))
            {
                steady.Add(peak.Frequency);
                peaks.RemoveAt(i);
            }
        }

        return steady;
    }
}
