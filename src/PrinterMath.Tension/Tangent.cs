namespace PrinterMath.Tension;

/// <summary>The straight part of a belt between two circles.</summary>
/// <remarks>
/// With signed radii s₁, s₂ (<see cref="BeltNode"/>) and centres d apart, the centres lie s₁ and s₂ to the left of the line, so L = √(d² − (s₂ − s₁)²) and the
/// line is turned by −asin((s₂ − s₁)/d) against the line of centres: outer tangents (equal signs) and inner ones (unequal) alike.
/// Source: elementary geometry.
/// </remarks>
internal readonly record struct Tangent(double Length, double Direction)
{
    internal static Tangent Between(BeltNode from, BeltNode to, HeadPosition head)
    {
        double dx = to.X(head) - from.X(head);
        double dy = to.Y(head) - from.Y(head);
        double squared = (dx * dx) + (dy * dy);
        double step = to.SignedRadius - from.SignedRadius;
        return new Tangent(
            Math.Sqrt(Math.Max(0, squared - (step * step))),
            Math.Atan2(dy, dx) - Math.Asin(Math.Clamp(step / Math.Sqrt(squared), -1, 1)));
    }

    /// <summary>Angle that the belt lies on a circle between two tangents, from 0 to 2π.</summary>
    internal static double Wrap(Tangent arriving, Tangent leaving, double signedRadius)
    {
        double turn = Math.IEEERemainder((leaving.Direction - arriving.Direction) * Math.Sign(signedRadius), 2 * Math.PI);
        return turn < -Grazing ? turn + (2 * Math.PI) : Math.Max(0, turn);
    }

    /// <summary>A turn that is negative by less is rounding on a pulley that the belt only grazes.</summary>
    private const double Grazing = 1e-9;
}
