namespace PrinterMath.Extrusion;

/// <summary>Codes of the findings about feed, filament, flow, dimensions and fit.</summary>
public static class ExtrusionFindings
{
    /// <summary>Blocking: all trials read alike and no resolution was stated, so the scatter is hidden and unknown.</summary>
    public const string FeedResolutionMissing = "feed.resolution-missing";

    /// <summary>Note: the ruler's uncertainty was not stated; the result counts scatter and resolution only.</summary>
    public const string FeedRulerNotStated = "feed.ruler-not-stated";

    /// <summary>Caution: the feed ratio changes from trial to trial in one direction.</summary>
    public const string FeedDrift = "feed.drift";

    /// <summary>Caution: one trial lies far from the others. It is reported, not removed.</summary>
    public const string FeedOutlier = "feed.outlier";

    /// <summary>Caution: a constant length is lost or gained in each trial, whatever its length.</summary>
    public const string FeedOffset = "feed.offset";

    /// <summary>Caution: commanded and measured length differ by more than a factor of two; a unit or a drive ratio is probably wrong.</summary>
    public const string FeedImplausible = "feed.implausible";

    /// <summary>Blocking: all places read alike in both directions and no resolution was stated.</summary>
    public const string FilamentResolutionMissing = "filament.resolution-missing";

    /// <summary>Caution: the mean is far from any filament, under 1 mm or over 4 mm; a unit is probably wrong.</summary>
    public const string FilamentImplausible = "filament.implausible";

    /// <summary>Caution: one reading differs from the median by more than a quarter; it was probably entered in another unit or misread.</summary>
    public const string FilamentMixedUnits = "filament.mixed-units";

    /// <summary>Blocking: what is left of the measured wall is narrower than the bead is high.</summary>
    public const string FlowWallTooThin = "flow.wall-too-thin";

    /// <summary>Caution: the flow would have to change by more than half; a unit, the number of beads or the spacing is probably wrong.</summary>
    public const string FlowImplausible = "flow.implausible";

    /// <summary>Caution: the estimates of the flow disagree by more than their uncertainties explain; the combined uncertainty is enlarged.</summary>
    public const string FlowInconsistent = "flow.inconsistent";

    /// <summary>Blocking: the features measured cannot tell scale and boundary offsets apart.</summary>
    public const string DimensionNotSeparable = "dimension.not-separable";

    /// <summary>Caution: scale and a boundary offset are told apart only poorly, since the lengths are too much alike.</summary>
    public const string DimensionPoorlySeparated = "dimension.poorly-separated";

    /// <summary>Note: as many features as unknowns; nothing checks the fit.</summary>
    public const string DimensionUnchecked = "dimension.unchecked";

    /// <summary>Caution: the features scatter about the model by more than their uncertainties explain; the uncertainties are enlarged.</summary>
    public const string DimensionScatter = "dimension.scatter";

    /// <summary>Caution: a feature deviates by more than a tenth of its length; a unit is probably wrong.</summary>
    public const string DimensionImplausible = "dimension.implausible";

    /// <summary>Blocking: nothing has been tried yet.</summary>
    public const string FitNoTrials = "fit.no-trials";

    /// <summary>Blocking: all trials fit, so the flow at which half of them would is not bounded from above.</summary>
    public const string FitAllFit = "fit.all-fit";

    /// <summary>Blocking: no trial fits, so the flow at which half of them would is not bounded from below.</summary>
    public const string FitNoneFits = "fit.none-fits";

    /// <summary>Blocking: the parts fit at high flow and not at low flow; answers or flows were probably interchanged.</summary>
    public const string FitOrderReversed = "fit.order-reversed";

    /// <summary>Caution: fitting and non-fitting trials overlap over a wide range of flow; the printing or the test does not repeat.</summary>
    public const string FitOrderContradicted = "fit.order-contradicted";

    /// <summary>Caution: the 50 % flow lies outside the bracket with a probability of at least 95 %; start again with another bracket.</summary>
    public const string FitBracketMissed = "fit.bracket-missed";

    /// <summary>Caution: the flow asked for by the fit contradicts the flow of the wall: look for boundary offset, shrinkage or pressure lag, and leave the flow alone.</summary>
    public const string FitConflictsWithWall = "fit.conflicts-with-wall";

    /// <summary>Blocking: pairs of readings hold no line between two instruments.</summary>
    public const string ComparisonUndetermined = "comparison.undetermined";

    /// <summary>Caution: pairs of readings scatter about the line between two instruments by more than their uncertainties say.</summary>
    public const string ComparisonMisfit = "comparison.misfit";
}
