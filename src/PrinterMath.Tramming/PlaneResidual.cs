using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>How far a probe point stands from the fitted plane; positive is above the plane.</summary>
/// <remarks>Equality by value; the default is point 0 on the plane.</remarks>
/// <param name="Index">Index of the point in the list that was fitted, from 0.</param>
/// <param name="SiValue">Distance from the plane in metres, positive above it: along z, or for <see cref="OrthogonalPlane"/> square to the plane.</param>
/// <param name="Leverage">Leverage h, a ratio from 0 to 1: how much the point decides about the plane at its own place; the sum over all points is 3.</param>
/// <param name="Standardised">
/// Residual over its own standard deviation, r√w/(σ√(1 − h)), or r√w/(σ√(1 + h)) for a point that a robust fit has set aside; null for a point that the plane must pass through (h = 1).
/// </param>
/// <param name="IsOutlier">Whether it stands out at a family-wise risk of 5 % (Bonferroni).</param>
/// <param name="RobustnessWeight">Share of its own weight that a robust fit has left to it, a ratio from 0 (set aside) to 1; 1 for least squares.</param>
public readonly record struct PlaneResidual(int Index, double SiValue, double Leverage, double? Standardised, bool IsOutlier, double RobustnessWeight = 1)
{
    /// <summary>Distance from the plane, positive above it: along z, or for <see cref="OrthogonalPlane"/> square to the plane.</summary>
    public Length Value => Length.FromMeters(SiValue);
}
