using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Modes from a free decay: least squares of decaying oscillations, found one after another and fitted together.</summary>
/// <remarks>
/// <para>Model: y = c + Σ A·exp(−ζω_n t)·cos(ω_d t + φ). A candidate is found by a matched filter over frequency and decay, fitted together with those before it, and kept when it
/// rises from the residual noise around it with the stated false-alarm probability. Uncertainties come from the curvature of the fit and the residual noise density near each mode,
/// so that noise need not be white; the clock's uncertainty joins every frequency. A term that does not decay measurably is a steady tone, not a mode.</para>
/// <para>On records resampled from stamped times the intervals hold as long as interpolation errs by less than the noise: tested to modes at an eighth of the rate, sampling times that scatter
/// by 3 % of the period and amplitudes of 400 times the noise. Noise with heavy tails (Laplace) shows false modes in 3 to 4 of 1000 records where 1 is stated.</para>
/// Source: the least-squares estimate reaches the Cramer-Rao bound, S. M. Kay, 1993, Fundamentals of Statistical Signal Processing: Estimation Theory, chapters 3 and 7; for damped
/// sinusoids Y.-X. Yao, S. M. Pandit, 1995, IEEE Trans. Signal Process. 43(4), 878-885 (both from memory).
/// </remarks>
/// <example><code>
/// ModeSet found = RingDown.Fit(record.X, new RingDownOptions { Start = Duration.FromSeconds(0.12), RelativeClockUncertainty = record.RelativeRateUncertainty });
/// if (found.TryGetDominant(out Mode? mode)) { Console.WriteLine(mode); }
/// </code></example>
public static class RingDown
{
    private const int FewestSamples = 64;
    private const int MostRefusals = 3;
    private const double WorthTrying = 0.3;
    private const double PeriodsNeeded = 3;
    private const double HighestShareOfRate = 0.48;

    /// <summary>The modes of a decay.</summary>
    /// <param name="signal">The signal; the decay is free from the stated start to the end.</param>
    /// <param name="options">Start, limits and clock; null for the defaults.</param>
    /// <returns>The modes, or a blocking finding that says why there are none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range, or the start lies at or after the end of the signal.</exception>
    public static ModeSet Fit(SampledSignal signal, RingDownOptions? options = null)
    {
        double rate = Guard.NotNull(signal).SampleRateHertz;
        options ??= new RingDownOptions();
        Guard.Between(options.MostModes, 1, 12, nameof(options));
        Guard.Between(options.FalseAlarmProbability, double.Epsilon, 0.1, nameof(options));
        double clock = Guard.Between(options.RelativeClockUncertainty, 0, 0.1, nameof(options));
        double offset = Math.Round(Guard.NonNegative(options.Start.Seconds, nameof(options)) * rate);
        if (offset >= signal.Count)
        {
            throw Guard.Out(nameof(options), options.Start.Seconds, FormattableString.Invariant($"a start before the end of the signal at {signal.Count / rate} s"));
        }

        ReadOnlySpan<double> decay = signal.Samples[(int)offset..];
        if (decay.Length < FewestSamples)
        {
            return new ModeSet([], [ModeReport.TooShort(decay.Length, FewestSamples)], 0);
        }

        double lowest = options.LowestFrequency is { } low ? Guard.Positive(low.Hertz, nameof(options)) / rate : PeriodsNeeded / decay.Length;
        double highest = options.HighestFrequency is { } high ? Guard.Positive(high.Hertz, nameof(options)) / rate : HighestShareOfRate;
        if (highest <= lowest)
        {
            throw Guard.Out(nameof(options), highest * rate, FormattableString.Invariant($"a highest frequency above the lowest, {lowest * rate} Hz"));
        }

        DecayFit? fit = Search(decay, new DecaySearch(2 * Math.PI * lowest, 2 * Math.PI * Math.Min(highest, HighestShareOfRate)), options);
        return fit is null
            ? new ModeSet([], [ModeReport.None(decay.Length / rate)], 0)
            : ModeReport.OfDecay(fit, decay, rate, clock);
    }

    private static DecayFit? Search(ReadOnlySpan<double> samples, DecaySearch search, RingDownOptions options)
    {
        double chance = Chance(samples.Length, options.FalseAlarmProbability);
        double mean = 0;
        foreach (double value in samples)
        {
            mean += value / samples.Length;
        }

        double[] residuals = new double[samples.Length];
        double total = 0;
        for (int n = 0; n < residuals.Length; n++)
        {
            residuals[n] = samples[n] - mean;
            total += residuals[n] * residuals[n];
        }

        DecayFit? fit = null;
        DecayTerm[] terms = [];
        var blocked = new List<double>();
        double rounding = 1e-26 * total;
        while (terms.Length < options.MostModes && blocked.Count < MostRefusals && Sum(residuals) > rounding)
        {
            if (search.Best(residuals, blocked) is not { } candidate || !IsAbove(candidate, residuals, chance, WorthTrying))
            {
                break;
            }

            if (DecayFit.Run(samples, [.. terms, candidate]) is { } trial && IsSound(trial, terms) && IsAbove(trial.Terms[^1], trial.Residuals, chance, 1))
            {
                fit = trial;
                terms = trial.Terms;
                residuals = trial.Residuals;
            }
            else
            {
                blocked.Add(candidate.Angle);
            }
        }

        return fit;
    }

    /// <summary>
    /// Probability for one cell of frequency and decay. The fit climbs to the maximum between the cells: the excursions of an exponential field in two dimensions above a level x are
    /// x times as many as cells would show. R. J. Adler, 1981, The Geometry of Random Fields (from memory).
    /// </summary>
    private static double Chance(int count, double falseAlarm)
    {
        double cells = count / 2.0 * DecaySearch.Ladder(count).Count();
        return falseAlarm / (cells * Math.Log(cells / falseAlarm));
    }

    /// <summary>Terms stay between zero and half the rate, decay rather than grow, and do not trade places.</summary>
    private static bool IsSound(DecayFit fit, DecayTerm[] before)
    {
        int count = fit.Residuals.Length;
        bool inRange = fit.Terms.All(t => t.Angle > 0 && t.Angle < Math.PI && t.Decay > -2.0 / count && t.Decay < 0.7 * t.Angle);
        bool atHome = before.Select((old, m) => Math.Abs(old.Angle - fit.Terms[m].Angle) < Math.Max(0.2 * old.Angle, 10.0 / count)).All(same => same);
        return inRange && atHome;
    }

    /// <summary>
    /// Energy of a term over twice the noise density around it, against the tail (1 + x/m)^−m of a ratio whose floor comes from m bins; the median of exponential variates is worth 1/2.08
    /// of their mean.
    /// </summary>
    private static bool IsAbove(DecayTerm term, double[] residuals, double chance, double share)
    {
        (double variance, int bins) = NoiseFloor.Of(residuals).Median(term.Angle);
        double worth = bins / 2.08;
        return term.Energy(residuals.Length) > 2 * variance * share * worth * (Math.Pow(chance, -1 / worth) - 1);
    }

    private static double Sum(double[] residuals)
    {
        double sum = 0;
        foreach (double r in residuals)
        {
            sum += r * r;
        }

        return sum;
    }
}
