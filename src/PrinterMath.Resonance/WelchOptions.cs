namespace PrinterMath.Resonance;

/// <summary>How a spectrum is averaged over segments.</summary>
public sealed record WelchOptions
{
    /// <summary>Samples in a segment; the resolution is rate/length. Any length works, powers of two are fastest.</summary>
    /// <value>2048. At least 2 and at most the length of the signal.</value>
    public int SegmentLength { get; init; } = 2048;

    /// <summary>Share of a segment that the next one repeats, a ratio.</summary>
    /// <value>0.5. Zero or more, less than 1; rounded down to whole samples.</value>
    public double Overlap { get; init; } = 0.5;

    /// <summary>The window.</summary>
    /// <value><see cref="SpectralWindow.Hann"/>.</value>
    public SpectralWindow Window { get; init; } = SpectralWindow.Hann;

    /// <summary>What is taken out of each segment first.</summary>
    /// <value><see cref="Detrending.Mean"/>.</value>
    public Detrending Detrend { get; init; } = Detrending.Mean;
}
