namespace PrinterMath.Extrusion;

/// <summary>What a measured length of a part lies between; it decides how a boundary offset enters.</summary>
public enum FeatureKind
{
    /// <summary>Between two outer faces: both move outward with an offset.</summary>
    Outer,

    /// <summary>Between two inner faces, of a hole or a slot: both move inward with an offset.</summary>
    Inner,

    /// <summary>Between two like faces or two axes: offsets cancel.</summary>
    CenterDistance,
}
