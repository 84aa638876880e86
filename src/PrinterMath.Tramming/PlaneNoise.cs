namespace PrinterMath.Tramming;

/// <summary>How a fit came by its uncertainty: stated or from the residuals, whether misfit widens it, the weighted sum of squared residuals, and how many readings are behind it.</summary>
internal readonly record struct PlaneNoise(bool IsStated, bool WidenForMisfit, double WeightedSquares, int Readings);
