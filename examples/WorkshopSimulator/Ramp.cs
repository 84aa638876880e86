namespace WorkshopSimulator;

/// <summary>The plane nearest to some heights in the sense of least squares, by the two normal equations about their middle.</summary>
/// <param name="X">Middle of the places.</param>
/// <param name="Y">Middle of the places.</param>
/// <param name="Height">Height there.</param>
/// <param name="SlopeX">Rise along x.</param>
/// <param name="SlopeY">Rise along y.</param>
internal readonly record struct Ramp(double X, double Y, double Height, double SlopeX, double SlopeY)
{
    internal static Ramp Through(IReadOnlyList<(double X, double Y, double Z)> places)
    {
        double x = places.Average(p => p.X);
        double y = places.Average(p => p.Y);
        double height = places.Average(p => p.Z);
        double xx = places.Sum(p => (p.X - x) * (p.X - x));
        double yy = places.Sum(p => (p.Y - y) * (p.Y - y));
        double xy = places.Sum(p => (p.X - x) * (p.Y - y));
        double xz = places.Sum(p => (p.X - x) * (p.Z - height));
        double yz = places.Sum(p => (p.Y - y) * (p.Z - height));
        double determinant = (xx * yy) - (xy * xy);
        return new Ramp(x, y, height, ((xz * yy) - (yz * xy)) / determinant, ((yz * xx) - (xz * xy)) / determinant);
    }

    internal double At(double x, double y) => Height + (SlopeX * (x - X)) + (SlopeY * (y - Y));
}
