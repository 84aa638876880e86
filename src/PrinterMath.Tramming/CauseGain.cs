namespace PrinterMath.Tramming;

/// <summary>How far the sum of squares falls by a cause, by how many degrees of freedom, and the mean logarithm of the coefficients' standard uncertainties, each given those before it.</summary>
internal readonly record struct CauseGain(double Square, int Freedom, double LogUncertainty);
