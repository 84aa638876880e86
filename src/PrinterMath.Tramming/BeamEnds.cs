namespace PrinterMath.Tramming;

/// <summary>How the ends of a cross-beam are held.</summary>
public enum BeamEnds
{
    /// <summary>Held in place but free to tilt: carried on bearings or a hinge; the larger sag.</summary>
    Supported,

    /// <summary>Held in place and kept from tilting: bolted to something much stiffer; a quarter of the sag.</summary>
    Clamped,
}
