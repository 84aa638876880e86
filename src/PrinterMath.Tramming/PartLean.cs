using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>Lean of a tall part: how far its top stands beside its foot, as the tilt of the z axis against the bed in the planes of x and of y.</summary>
/// <remarks>
/// <para>Lean along x: atan(offset/height), positive when the top stands towards +x of the foot. It is the deviation from square of x and z, ε of <see cref="Squareness"/>, where the bed lies
/// along x and y as they move. The whole lean θ = atan(√(Δx² + Δy²)/h) has no direction when it cannot be told from none.</para>
/// <para>Source: trigonometry; JCGM 100:2008, 5.1.2; ISO 230-1:2012 for squareness of a vertical axis to a plane (from memory).</para>
/// </remarks>
/// <example><code>PartLean lean = PartLean.Of(offsetX, offsetY, height);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PartLean
{
    private readonly Measured<Length> _x;
    private readonly Measured<Length> _y;
    private readonly Measured<Length> _height;

    private PartLean(Measured<Length> x, Measured<Length> y, Measured<Length> height)
    {
        _x = x;
        _y = y;
        _height = height;
    }

    /// <summary>Lean in the plane of x and z, positive when the top stands towards +x.</summary>
    public Measured<Angle> AlongX => LeanOf(_x);

    /// <summary>Lean in the plane of y and z, positive when the top stands towards +y.</summary>
    public Measured<Angle> AlongY => LeanOf(_y);

    /// <summary>A lean from offsets of the top against the foot.</summary>
    /// <param name="topTowardsX">How far the top stands towards +x of the foot.</param>
    /// <param name="topTowardsY">How far the top stands towards +y of the foot.</param>
    /// <param name="height">Height between the two places measured, greater than zero.</param>
    /// <returns>The lean.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is not positive, or an offset is larger than it: no part leans by more than 45°.</exception>
    /// <exception cref="InvalidOperationException">A length was never measured.</exception>
    public static PartLean Of(Measured<Length> topTowardsX, Measured<Length> topTowardsY, Measured<Length> height)
    {
        Guard.Positive(height.SiValue, nameof(height));
        Guard.Between(topTowardsX.SiValue, -height.SiValue, height.SiValue, nameof(topTowardsX));
        Guard.Between(topTowardsY.SiValue, -height.SiValue, height.SiValue, nameof(topTowardsY));
        return new PartLean(topTowardsX, topTowardsY, height);
    }

    /// <summary>The whole lean and its direction, where it can be told from none at 95 %.</summary>
    /// <param name="lean">Angle between the part and the vertical, greater than zero.</param>
    /// <param name="direction">Where the top stands, from +x, positive towards +y, from −180° to 180°.</param>
    /// <returns>Whether one of the offsets, each tested at 2.5 %, is significant.</returns>
    public bool TryGetLean(out Measured<Angle> lean, out Measured<Angle> direction)
    {
        lean = direction = default;
        if (!IsSignificant(_x) && !IsSignificant(_y))
        {
            return false;
        }

        double x = _x.SiValue, y = _y.SiValue, h = _height.SiValue;
        double offset = Math.Sqrt((x * x) + (y * y));
        double square = (offset * offset) + (h * h);
        BudgetInput[] inputs = [BudgetInput.Of("offset along x", _x), BudgetInput.Of("offset along y", _y), BudgetInput.Of("height", _height)];
        lean = Propagation.FirstOrder<Angle>(Math.Atan(offset / h), inputs, [h * x / (offset * square), h * y / (offset * square), -offset / square]).Result;
        direction = Propagation.FirstOrder<Angle>(Math.Atan2(y, x), inputs, [-y / (offset * offset), x / (offset * offset), 0]).Result;
        return true;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Both leans.</returns>
    public override string ToString() => $"lean along x {AlongX}, along y {AlongY}";

    private static bool IsSignificant(Measured<Length> offset) => offset.SiStandardUncertainty == 0
        ? offset.SiValue != 0
        : TwoSidedTest.ProbabilityBeyond(offset.SiValue / offset.SiStandardUncertainty, offset.DegreesOfFreedom) < TwoSidedTest.Risk / 2;

    private Measured<Angle> LeanOf(Measured<Length> offset)
    {
        double d = offset.SiValue, h = _height.SiValue, square = (d * d) + (h * h);
        return Propagation.FirstOrder<Angle>(
            Math.Atan(d / h), [BudgetInput.Of("offset", offset), BudgetInput.Of("height", _height)], [h / square, -d / square]).Result;
    }
}
