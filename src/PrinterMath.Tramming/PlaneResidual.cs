using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>How far a probe point stands from the fitted plane; positive is above the plane.</summary>
/// <remarks>Equality by value; the default is point 0 on the plane.</remarks>
/// <param name="Index">Index of the point in the list that was fitted, from 0.</param>
/// <param name="SiValue">Vertical distance from the plane in metres, positive above it.</param>
/// <param name="Leverage">Leverage h, a ratio from 0 to 1: how much the point decides about the plane at its own place; the sum over all points is 3.</param>
/// <param name="Standardised">Residual over its own standard deviation, r√w/(σ√(1 − h)); null for a point that the plane must pass through (h = 1).</param>
/// <param name="IsOutlier">Whether it stands out at a family-wise risk of 5 % (Bonferroni).</param>
public readonly record struct PlaneResidual(int Index, double SiValue, double Leverage, double? Standardised, bool IsOutlier)
{
    /// <summary>Vertical distance from the plane, positive above it.</summary>
    public Length Value => Length.FromMeters(SiValue);
}
