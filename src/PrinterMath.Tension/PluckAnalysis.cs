using PrinterMath.Measurement;

namespace PrinterMath.Tension;

/// <summary>What one pluck said: its string with uncertainty, or the finding that stands in the way.</summary>
internal sealed record PluckAnalysis
{
    private const double Beyond = 1.5;

    internal required PluckStretch Stretch { get; init; }

    internal required double SampleRate { get; init; }

    /// <summary>What keeps this pluck from an answer; null when it has one.</summary>
    internal Finding? Blocked { get; init; }

    /// <summary>Of two strings between which this pluck did not decide the one with the lesser odds, its first partial in Hz; 0 when there were no two.</summary>
    internal double Behind { get; init; }

    /// <summary>Of two strings between which this pluck did not decide the one with the better odds, its first partial in Hz, when it was told from the string an octave lower; else 0.</summary>
    internal double NoOctave { get; init; }

    internal StiffStringFit? Fit { get; init; }

    internal GlideFit? Glide { get; init; }

    internal IReadOnlyList<Partial> Partials { get; init; } = [];

    internal double SignalToNoise { get; init; }

    internal double LogOdds { get; init; }

    internal IReadOnlyList<double> SteadyLines { get; init; } = [];

    /// <summary>A second string that rings with the first; null when none is heard.</summary>
    internal Beat? Beat { get; init; }

    /// <summary>f0·√(1 + B) in Hz.</summary>
    internal double FirstPartial => Fit is null ? 0 : Fit.Model.Partial(1);

    /// <summary>
    /// What "the" frequency of the window leaves open: its movement within the window, and how far the small-amplitude limit may lie from it. The limit that
    /// was seen, less the square that its noise adds, counts one and a half times, since blocks that average over a glide see about two thirds of it, and its noise whole, since a glide may hide there. Both are type B and add in squares.
    /// </summary>
    internal double GlideUncertainty
    {
        get
        {
            double spread = Glide?.RelativeSpread ?? 0, limit = Glide?.RelativeLimit ?? 0, hidden = Glide?.LimitUncertainty ?? 0;
            double seen = Math.Max(0, (limit * limit) - (hidden * hidden));
            return FirstPartial * Math.Sqrt((spread * spread) + (Beyond * Beyond * seen) + (hidden * hidden));
        }
    }

    /// <summary>
    /// What a second string leaves open: the two together may be heard anywhere up to r/(1 + r), at most r, of their difference from the first, r being the ratio of
    /// their amplitudes; rectangular, type B.
    /// </summary>
    internal double PullUncertainty => Beat is null ? 0 : Math.Min(1, Beat.Level) * Beat.RelativeDifference * FirstPartial / Math.Sqrt(3);

    /// <summary>Glide and pull, both type B.</summary>
    internal double SystematicUncertainty => Math.Sqrt((GlideUncertainty * GlideUncertainty) + (PullUncertainty * PullUncertainty));

    /// <summary>Standard uncertainty of the first partial without the glide.</summary>
    internal double ScatterUncertainty => Fit is null ? 0 : Math.Max(Fit.FirstPartialUncertainty, FirstPartial * (Glide?.RelativeScatter ?? 0));

    internal double Uncertainty => Math.Sqrt((ScatterUncertainty * ScatterUncertainty) + (SystematicUncertainty * SystematicUncertainty));

    /// <summary>What the first partial would be at vanishing amplitude, in Hz; null when the pluck was too short to be followed.</summary>
    internal double? SmallAmplitudeLimit => Glide is null ? null : FirstPartial * (1 + Glide.RelativeLimit);

    internal double LimitUncertainty =>
        Glide is null ? 0 : Math.Sqrt(
            (ScatterUncertainty * ScatterUncertainty) + (PullUncertainty * PullUncertainty) + Math.Pow(FirstPartial * Glide.LimitUncertainty, 2));

    /// <summary>The fewer of those of the partials and of the line over power.</summary>
    internal double LimitDegreesOfFreedom => Glide is null ? 1 : Math.Max(1, Math.Min(Fit!.DegreesOfFreedom, Glide.DegreesOfFreedom));

    /// <summary>Welch-Satterthwaite; glide and pull are rectangular distributions taken as known. Source: JCGM 100:2008, G.4.1.</summary>
    internal double DegreesOfFreedom
    {
        get
        {
            double scatter = ScatterUncertainty;
            double own = Fit is null ? 1
                : Fit.FirstPartialUncertainty >= scatter ? Fit.DegreesOfFreedom : Math.Max(1, Glide?.DegreesOfFreedom ?? 1);
            return scatter > 0 ? Math.Max(1, own * Math.Pow(Uncertainty / scatter, 4)) : double.PositiveInfinity;
        }
    }
}
