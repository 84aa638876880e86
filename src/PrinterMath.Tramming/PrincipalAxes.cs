namespace PrinterMath.Tramming;

/// <summary>
/// The frame in which the weighted places are centred and uncorrelated: u along their longest extent, v across it. In it the normal
/// equations of a plane are diagonal.
/// </summary>
internal readonly record struct PrincipalAxes(
    double CentreX, double CentreY, double Cosine, double Sine, double Weight, double AlongMoment, double AcrossMoment, double LongestAlong, double LongestAcross)
{
    internal static PrincipalAxes Of(ReadOnlySpan<Place> places)
    {
        double weight = 0, shiftX = 0, shiftY = 0;
        foreach (Place p in places)
        {
            weight += p.Weight;
            shiftX += p.Weight * (p.X - places[0].X);
            shiftY += p.Weight * (p.Y - places[0].Y);
        }

        double centreX = places[0].X + (shiftX / weight);
        double centreY = places[0].Y + (shiftY / weight);
        double xx = 0, xy = 0, yy = 0;
        foreach (Place p in places)
        {
            double dx = p.X - centreX;
            double dy = p.Y - centreY;
            xx += p.Weight * dx * dx;
            xy += p.Weight * dx * dy;
            yy += p.Weight * dy * dy;
        }

        (double sine, double cosine) = Math.SinCos(Math.Atan2(2 * xy, xx - yy) / 2);
        var frame = new PrincipalAxes(centreX, centreY, cosine, sine, weight, 0, 0, 0, 0);
        double along = 0, across = 0, longestAlong = 0, longestAcross = 0;
        foreach (Place p in places)
        {
            (double u, double v) = frame.Local(p.X, p.Y);
            along += p.Weight * u * u;
            across += p.Weight * v * v;
            longestAlong = Math.Max(longestAlong, Math.Abs(u));
            longestAcross = Math.Max(longestAcross, Math.Abs(v));
        }

        return frame with { AlongMoment = along, AcrossMoment = across, LongestAlong = longestAlong, LongestAcross = longestAcross };
    }

    internal (double U, double V) Local(double x, double y)
    {
        double dx = x - CentreX;
        double dy = y - CentreY;
        return ((dx * Cosine) + (dy * Sine), (dy * Cosine) - (dx * Sine));
    }

    /// <summary>Element of the hat matrix without the weight: 1/W + u₁u₂/Σwu² + v₁v₂/Σwv².</summary>
    internal double Influence(double x1, double y1, double x2, double y2)
    {
        (double u1, double v1) = Local(x1, y1);
        (double u2, double v2) = Local(x2, y2);
        return (1 / Weight) + (u1 * u2 / AlongMoment) + (v1 * v2 / AcrossMoment);
    }
}
