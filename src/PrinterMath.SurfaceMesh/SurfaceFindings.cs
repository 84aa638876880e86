namespace PrinterMath.SurfaceMesh;

/// <summary>Codes of the findings about grids, height models, shapes and flatness.</summary>
public static class SurfaceFindings
{
    /// <summary>Note: places were probed more than once, and their heights were averaged.</summary>
    public const string Repeated = "grid.repeated";

    /// <summary>Caution: repeated heights of one place scatter more than their uncertainty allows, at 0.1 % false alarms for the whole grid.</summary>
    public const string RepeatsDisagree = "grid.repeats-disagree";

    /// <summary>Caution: nodes of the grid were not probed.</summary>
    public const string Missing = "grid.missing";

    /// <summary>Caution: a height model bridges nodes that were not probed, with an increased uncertainty there.</summary>
    public const string Bridged = "height.bridged";

    /// <summary>Blocking: nothing is known of the probe's repeatability, so heights carry no uncertainty.</summary>
    public const string UncertaintyUnknown = "height.uncertainty-unknown";

    /// <summary>Blocking: the points cannot tell the terms of the shape apart.</summary>
    public const string ShapeUndetermined = "shape.undetermined";

    /// <summary>Caution: what the terms leave over is more than probe noise: there is shape of higher order, or a reading is wrong.</summary>
    public const string ShapeLeftOver = "shape.left-over";

    /// <summary>Caution: what the terms leave over is less than the stated probe noise: the repeatability is overstated.</summary>
    public const string NoiseOverstated = "shape.noise-overstated";

    /// <summary>Blocking: the points lie on one line and hold no flatness.</summary>
    public const string FlatnessUndetermined = "flatness.undetermined";

    /// <summary>Blocking: without the probe's repeatability the peak-to-valley cannot be corrected for noise.</summary>
    public const string RepeatabilityUnknown = "flatness.repeatability-unknown";

    /// <summary>Note: the readings scatter about a plane no more than the probe does; the surface may as well be flat.</summary>
    public const string FlatWithinNoise = "flatness.within-noise";

    /// <summary>Caution: a reading of a map that its neighbours do not bear out.</summary>
    public const string MapOutlier = "map.outlier";

    /// <summary>Caution: a map has too few probed nodes for its readings to be compared with their neighbours.</summary>
    public const string MapTooSmall = "map.too-small";

    /// <summary>Caution: the curvature of a grid along one axis is no more than noise alone may have made.</summary>
    public const string CurvatureWithinNoise = "curvature.within-noise";

    /// <summary>Blocking: no grid within the bounds of a probing plan meets the tolerance.</summary>
    public const string PlanOutOfReach = "plan.out-of-reach";

    /// <summary>Blocking: places that are too few, or on one line, hold no surface: neither a thin plate nor one by kriging.</summary>
    public const string PlateUndetermined = "plate.undetermined";

    /// <summary>Caution: cross-validation of a thin plate tells no noise from shape, so that it passes through all readings.</summary>
    public const string PlateNotSmoothed = "plate.not-smoothed";
}
