namespace WorkshopSimulator;

/// <summary>Cubic Hermite shape functions of one element: displacement and slope at its two ends.</summary>
internal static class HermiteShape
{
    internal static void At(double s, double h, Span<double> value, Span<double> slope, Span<double> curvature)
    {
        value[0] = 1 - (3 * s * s) + (2 * s * s * s);
        value[1] = h * (s - (2 * s * s) + (s * s * s));
        value[2] = (3 * s * s) - (2 * s * s * s);
        value[3] = h * ((s * s * s) - (s * s));
        slope[0] = ((6 * s * s) - (6 * s)) / h;
        slope[1] = 1 - (4 * s) + (3 * s * s);
        slope[2] = ((6 * s) - (6 * s * s)) / h;
        slope[3] = (3 * s * s) - (2 * s);
        curvature[0] = ((12 * s) - 6) / (h * h);
        curvature[1] = ((6 * s) - 4) / h;
        curvature[2] = (6 - (12 * s)) / (h * h);
        curvature[3] = ((6 * s) - 2) / h;
    }
}
