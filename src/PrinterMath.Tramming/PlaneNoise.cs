namespace PrinterMath.Tramming;

/// <summary>How a fit came by its uncertainty: stated or from the residuals, whether misfit widens it, and the weighted sum of squared residuals.</summary>
internal readonly record struct PlaneNoise(bool IsStated, bool WidenForMisfit, double WeightedSquares);
