namespace PrinterMath.Measurement;

/// <summary>Correlation coefficient between two named inputs of a budget; pairs not named are independent.</summary>
/// <remarks>Equality by value; the default names no inputs and is refused where it is used. Source: JCGM 100:2008 (GUM), 5.2.2, equation (14).</remarks>
/// <param name="First">Name of one input.</param>
/// <param name="Second">Name of the other input.</param>
/// <param name="Coefficient">r, from −1 to 1; 1 for two readings that share one systematic error.</param>
public readonly record struct InputCorrelation(string First, string Second, double Coefficient);
