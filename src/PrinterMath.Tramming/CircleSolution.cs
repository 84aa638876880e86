namespace PrinterMath.Tramming;

/// <summary>A circle by least squares, its covariance row by row, its residuals, and the narrowest ring.</summary>
internal sealed record CircleSolution(
    double X, double Y, double Radius, double[] Covariance, int DegreesOfFreedom, double[] Residuals, double ZoneX, double ZoneY, double ZoneWidth);
