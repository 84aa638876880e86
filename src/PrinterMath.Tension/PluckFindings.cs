namespace PrinterMath.Tension;

/// <summary>Stable codes of the findings of <see cref="Pluck.Read"/>.</summary>
/// <example><code>bool again = reading.Findings.Any(f => f.Code == PluckFindings.NoPitch);</code></example>
public static class PluckFindings
{
    /// <summary>Blocking: silence, a constant, or no place where sound sets in.</summary>
    public const string None = "pluck.none";

    /// <summary>Blocking: sound without one clear set of partials, as a knock or handling noise makes.</summary>
    public const string NoPitch = "pluck.no-pitch";

    /// <summary>Blocking: the sound does not decay, so it is a hum, a fan or a tone, not a pluck.</summary>
    public const string Steady = "pluck.steady";

    /// <summary>Blocking: the sound dies, or the recording ends, before enough periods have passed.</summary>
    public const string TooShort = "pluck.too-short";

    /// <summary>Blocking: two fundamentals a whole ratio apart, mostly an octave, explain the sound almost equally well.</summary>
    public const string OctaveUndecided = "pluck.octave-undecided";

    /// <summary>Blocking: several plucks were heard and no majority agrees on a fundamental.</summary>
    public const string Disagree = "pluck.disagree";

    /// <summary>Blocking: the sample rate cannot carry even the lowest fundamental looked for.</summary>
    public const string RateTooLow = "pluck.rate-too-low";

    /// <summary>Note: the sample rate carries only part of the range of fundamentals looked for.</summary>
    public const string RangeReduced = "pluck.range-reduced";

    /// <summary>Blocking: two channels, sample after sample in turn, were read as one; pass one of them.</summary>
    public const string Interleaved = "pluck.interleaved";

    /// <summary>Caution: a second string of nearly equal pitch rings too. Damp the neighbouring belt by hand and pluck again.</summary>
    public const string Beats = "pluck.beats";

    /// <summary>Caution: a noise gate shut while the span was ringing. The frequency stands, decay times are withheld.</summary>
    public const string Gated = "pluck.gated";

    /// <summary>Caution: the recorder's gain follows the sound. The frequency stands, decay times are withheld and levels are not to be trusted.</summary>
    public const string LevelControlled = "pluck.level-controlled";

    /// <summary>Note: more plucks were found than <see cref="PluckOptions.MostPlucks"/> lets be analysed; the loudest were taken.</summary>
    public const string LeftOut = "pluck.left-out";

    /// <summary>Note: sounds without a pitch between the plucks, as taps and bumps make, were set aside.</summary>
    public const string Handling = "pluck.handling";

    /// <summary>Caution: samples stand at the limit of the recorder. Frequencies survive clipping, levels and decay do not.</summary>
    public const string Clipped = "pluck.clipped";

    /// <summary>Note: a steady line at a multiple of 50 Hz or 60 Hz was set aside.</summary>
    public const string Hum = "pluck.hum";

    /// <summary>Note: the frequency moves over the window; the uncertainty allows for it.</summary>
    public const string Glide = "pluck.glide";

    /// <summary>Note: several plucks were heard and combined.</summary>
    public const string Several = "pluck.several";

    /// <summary>Caution: a pluck that disagrees with the others was set aside.</summary>
    public const string Outlier = "pluck.outlier";

    /// <summary>Caution: fewer than three partials carry the reading.</summary>
    public const string FewPartials = "pluck.few-partials";
}
