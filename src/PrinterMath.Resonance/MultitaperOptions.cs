namespace PrinterMath.Resonance;

/// <summary>How a spectrum is averaged over tapers.</summary>
public sealed record MultitaperOptions
{
    /// <summary>N·W: half the width over which the spectrum is smoothed, in units of one over the duration.</summary>
    /// <value>4. At least 1, at most 64 and less than a quarter of the samples.</value>
    public double TimeBandwidth { get; init; } = 4;

    /// <summary>Number of tapers; null for 2·NW − 1 rounded down, those that hardly leak.</summary>
    /// <value>Null. 1 to 2·NW.</value>
    public int? Tapers { get; init; }

    /// <summary>How the tapers' spectra are averaged.</summary>
    /// <value><see cref="TaperWeighting.Concentration"/>.</value>
    public TaperWeighting Weighting { get; init; } = TaperWeighting.Concentration;

    /// <summary>What is taken out of the signal first.</summary>
    /// <value><see cref="Detrending.Mean"/>.</value>
    public Detrending Detrend { get; init; } = Detrending.Mean;
}
