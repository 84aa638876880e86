namespace PrinterMath.Tramming;

/// <summary>A mean square and its degrees of freedom, with the factor it has in a variance component.</summary>
internal readonly record struct MeanSquare(double Factor, double Value, double DegreesOfFreedom);
