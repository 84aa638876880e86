namespace PrinterMath.SurfaceMesh;

/// <summary>A stretch of a line on which the height is one polynomial: from and to in metres from the start, Bernstein coefficients, and what the polynomial may be off by.</summary>
internal sealed record ProfileStretch(double From, double To, double[] Coefficients, double Error);
