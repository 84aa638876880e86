namespace PrinterMath.Tramming;

/// <summary>Variances of dz/dx and dz/dy and their covariance.</summary>
internal readonly record struct SlopeCovariance(double X, double Y, double Both);
