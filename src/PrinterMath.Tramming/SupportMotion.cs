namespace PrinterMath.Tramming;

/// <summary>
/// How changes of height at the supports move a stiff bed: about a reference place, with tilts in one direction (E) or in both. What holds the bed fast anchors the reference.
/// A change Δᵢ at dᵢ from the reference tilts the bed by S⁺dᵢΔᵢ, S⁺ the pseudoinverse of Σdᵢdᵢᵀ within the tilts that are possible, and lifts the reference of a bed that is not anchored by Δᵢ/n.
/// </summary>
internal readonly record struct SupportMotion(bool IsAnchored, double X, double Y, int Tilts, double EX, double EY, double Lift, double SXX, double SXY, double SYY)
{
    /// <summary>Places nearer to each other are one.</summary>
    internal const double SamePlace = 1e-3;

    /// <summary>Supports nearer to one line than this fraction of their extent would turn millimetres at a screw into centimetres at the edge.</summary>
    private const double LeastWidth = 0.01;

    internal static double Distance(in Place a, in Place b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));

    /// <summary>Height at a place for a change of one at a support.</summary>
    internal double Influence(double x, double y, in Place support)
    {
        (double gx, double gy) = Gradient(support);
        return Lift + (gx * (x - X)) + (gy * (y - Y));
    }

    /// <summary>Slopes for a change of one at a support.</summary>
    internal (double X, double Y) Gradient(in Place support)
    {
        double dx = support.X - X;
        double dy = support.Y - Y;
        return ((SXX * dx) + (SXY * dy), (SXY * dx) + (SYY * dy));
    }

    /// <summary>The motion that is left when one support stays as it is.</summary>
    internal SupportMotion Holding(double x, double y)
    {
        if (!IsAnchored)
        {
            return this with { IsAnchored = true, X = x, Y = y, Lift = 0 };
        }

        double dx = x - X;
        double dy = y - Y;
        double length = Math.Sqrt((dx * dx) + (dy * dy));
        return Tilts == 2 && length > SamePlace ? this with { Tilts = 1, EX = -dy / length, EY = dx / length } : this with { Tilts = Tilts == 2 ? 2 : 0 };
    }

    internal static SupportMotion Of(ReadOnlySpan<Place> held, ReadOnlySpan<Place> moved, string parameter)
    {
        if (held.IsEmpty)
        {
            return Free(moved, parameter);
        }

        int far = 0;
        for (int i = 1; i < held.Length; i++)
        {
            far = Distance(held[i], held[0]) > Distance(held[far], held[0]) ? i : far;
        }

        return Distance(held[far], held[0]) > SamePlace ? About(held, far, moved, parameter) : Around(held[0], moved, parameter);
    }

    private static SupportMotion Free(ReadOnlySpan<Place> moved, string parameter)
    {
        var axes = PrincipalAxes.Of(moved);
        if (moved.Length == 2)
        {
            return axes.LongestAlong > SamePlace / 2
                ? new SupportMotion(false, axes.CentreX, axes.CentreY, 1, axes.Cosine, axes.Sine, 0.5, 0, 0, 0).With(moved)
                : throw Guard.Refused(parameter, "The two supports stand within 1 mm of each other; they cannot tilt a bed.");
        }

        return IsWide(axes, moved.Length, parameter)
            ? new SupportMotion(false, axes.CentreX, axes.CentreY, 2, 1, 0, 1.0 / moved.Length, 0, 0, 0).With(moved)
            : default;
    }

    /// <summary>One place is fixed: any tilt about it, or, with one other support, the tilt towards that.</summary>
    private static SupportMotion Around(in Place fast, ReadOnlySpan<Place> moved, string parameter)
    {
        if (moved.Length == 1)
        {
            double length = Distance(fast, moved[0]);
            return length > SamePlace
                ? new SupportMotion(true, fast.X, fast.Y, 1, (moved[0].X - fast.X) / length, (moved[0].Y - fast.Y) / length, 0, 0, 0, 0).With(moved)
                : throw Guard.Refused(parameter, "The two supports stand within 1 mm of each other; they cannot tilt a bed.");
        }

        Place[] all = [fast, .. moved];
        return IsWide(PrincipalAxes.Of(all), all.Length, parameter) ? new SupportMotion(true, fast.X, fast.Y, 2, 1, 0, 0, 0, 0, 0).With(moved) : default;
    }

    /// <summary>A line is fixed: the bed turns about it.</summary>
    private static SupportMotion About(ReadOnlySpan<Place> held, int far, ReadOnlySpan<Place> moved, string parameter)
    {
        Place first = held[0];
        double length = Distance(held[far], first);
        double ex = -(held[far].Y - first.Y) / length;
        double ey = (held[far].X - first.X) / length;
        double Across(in Place p) => Math.Abs(((p.X - first.X) * ex) + ((p.Y - first.Y) * ey));
        foreach (Place other in held)
        {
            if (Across(other) > LeastWidth * length)
            {
                throw Guard.Refused(parameter, FormattableString.Invariant($"The fixed supports do not stand in one line ({Across(other) * 1e3:0.###} mm off it): they hold the bed, and no screw can tilt it."));
            }
        }

        foreach (Place screw in moved)
        {
            if (!(Across(screw) > LeastWidth * Math.Max(length, Distance(screw, first))))
            {
                throw Guard.Refused(parameter, FormattableString.Invariant($"The screw at ({screw.X * 1e3:0.###}, {screw.Y * 1e3:0.###}) mm stands on the line about which the bed turns; it cannot move the bed."));
            }
        }

        return new SupportMotion(true, first.X, first.Y, 1, ex, ey, 0, 0, 0, 0).With(moved);
    }

    private static bool IsWide(in PrincipalAxes axes, int supports, string parameter) => axes.LongestAcross > LeastWidth * axes.LongestAlong
        ? true
        : throw Guard.Refused(
            parameter,
            FormattableString.Invariant($"The {supports} supports stand within {axes.LongestAcross * 1e3:0.###} mm of one line over {2 * axes.LongestAlong * 1e3:0.#} mm; they cannot level a bed across it."));

    private SupportMotion With(ReadOnlySpan<Place> moved)
    {
        double xx = 0, xy = 0, yy = 0;
        foreach (Place p in moved)
        {
            double dx = p.X - X;
            double dy = p.Y - Y;
            xx += dx * dx;
            xy += dx * dy;
            yy += dy * dy;
        }

        if (Tilts == 1)
        {
            double along = (EX * EX * xx) + (2 * EX * EY * xy) + (EY * EY * yy);
            return this with { SXX = EX * EX / along, SXY = EX * EY / along, SYY = EY * EY / along };
        }

        double determinant = (xx * yy) - (xy * xy);
        return this with { SXX = yy / determinant, SXY = -xy / determinant, SYY = xx / determinant };
    }
}
