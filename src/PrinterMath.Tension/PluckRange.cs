namespace PrinterMath.Tension;

/// <summary>Fundamentals looked for, in Hz.</summary>
internal readonly record struct PluckRange(double Lowest, double Highest);
