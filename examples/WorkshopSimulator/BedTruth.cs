namespace WorkshopSimulator;

/// <summary>What is true of the bed, seen from the plane the nozzle moves in.</summary>
/// <remarks>
/// Height in millimetres at (x, y), positive upwards:
/// offset + slopeX·(x − c) + slopeY·(y − c) + bow·(r² − mean)/R² + twist·(x − c)(y − c)/R², with c the middle of the bed and R half
/// the width of the probed square. On a square grid about c neither bow nor twist tilts the surface.
/// </remarks>
/// <param name="OffsetMillimetres">Height of the middle plane.</param>
/// <param name="SlopeX">Rise along x in mm/mm.</param>
/// <param name="SlopeY">Rise along y in mm/mm.</param>
/// <param name="BowMillimetres">Rise of the middle of an edge over the middle of the bed.</param>
/// <param name="TwistMillimetres">Height of a corner of the probed square by twist.</param>
/// <param name="ProbeNoiseMillimetres">Standard deviation of a probe reading.</param>
public sealed record BedTruth(
    double OffsetMillimetres,
    double SlopeX,
    double SlopeY,
    double BowMillimetres,
    double TwistMillimetres,
    double ProbeNoiseMillimetres)
{
    /// <summary>Middle of the bed in x and in y.</summary>
    public const double Centre = 110;

    /// <summary>Half the side of the probed square.</summary>
    public const double Reach = 90;

    /// <summary>Height of the surface without its tilt and offset.</summary>
    public double ShapeAt(double x, double y)
    {
        double u = (x - Centre) / Reach;
        double v = (y - Centre) / Reach;
        return (BowMillimetres * ((u * u) + (v * v) - 1)) + (TwistMillimetres * u * v);
    }

    /// <summary>Height of the surface.</summary>
    public double HeightAt(double x, double y) =>
        OffsetMillimetres + (SlopeX * (x - Centre)) + (SlopeY * (y - Centre)) + ShapeAt(x, y);
}
