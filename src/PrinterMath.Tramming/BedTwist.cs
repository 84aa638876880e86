using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>
/// Twist of a bed on four supports or more: the amplitude t of the saddle fitted jointly with the plane, positive where the first support, and of four the one
/// diagonally across, stand above the plane.
/// </summary>
/// <remarks>
/// <para>z = a + b·x + c·y + t·p(x, y). At the supports p is, a plane apart, the pattern of heights that no plane contains, largest value 1: for a
/// rectangle +1, −1, +1, −1 in order around, so that t = (h₁ − h₂ + h₃ − h₄)/4. Between the supports p is the product of the coordinates along
/// the bisectors of the diagonals, the shape of a thin plate twisted by its corners. With more than four supports it is the saddle, of all directions, that stands out most from a plane at them.</para>
/// <para>No tilt removes a twist: it is kept out of the turns unless <see cref="TrammingOptions.RemoveTwist"/> asks for it. Findings: <c>twist.significant</c> (caution), <c>twist.notProbed</c>,
/// <c>twist.uncertainty.unknown</c>, <c>twist.noSaddle</c> and <c>twist.noPlane</c> (blocking for the amplitude alone, not for the plan).</para>
/// <para>Source: least squares with an added regressor, Frisch, Waugh 1933, Econometrica 1, 387 (from memory); the saddle w = k·x·y of a plate twisted
/// at its corners: Timoshenko, Woinowsky-Krieger 1959, Theory of Plates and Shells, pure bending and twisting (from memory).</para>
/// </remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class BedTwist
{
    private readonly Measured<Length> _amplitude;
    private readonly Finding[] _findings;

    internal BedTwist(Measured<Length> amplitude, Finding? finding)
    {
        _amplitude = amplitude;
        _findings = finding is null ? [] : [finding];
    }

    /// <summary>The amplitude t; the lowest and the highest screw of a twisted rectangle differ by 2|t|.</summary>
    /// <exception cref="IndeterminateException">The points do not carry the twist.</exception>
    public Measured<Length> Amplitude =>
        TryGetAmplitude(out Measured<Length> amplitude) ? amplitude : throw new IndeterminateException(_findings[0]);

    /// <summary>What was noticed.</summary>
    public IReadOnlyList<Finding> Findings => Array.AsReadOnly(_findings);

    /// <summary>Whether the twist can be told from none at 95 %.</summary>
    public bool IsSignificant =>
        _amplitude.HasValue && TwoSidedTest.IsSignificant(_amplitude.SiValue, _amplitude.SiStandardUncertainty, _amplitude.DegreesOfFreedom);

    /// <summary>The amplitude t, where the points carry it.</summary>
    /// <param name="amplitude">The amplitude.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetAmplitude(out Measured<Length> amplitude)
    {
        amplitude = _amplitude;
        return _amplitude.HasValue;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The amplitude, or why there is none.</returns>
    public override string ToString() => _amplitude.HasValue ? _amplitude.ToString() : _findings[0].ToString();
}
