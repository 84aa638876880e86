namespace PrinterMath.Tramming;

/// <summary>A plane after the turns: height at the reference place, and the slopes that are left.</summary>
internal readonly record struct PredictedLevel(double Height, double X, double Y, double SlopeX, double SlopeY)
{
    internal double At(double x, double y) => Height + (SlopeX * (x - X)) + (SlopeY * (y - Y));
}
