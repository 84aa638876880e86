using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>A lead screw with its own motor that carries the bed, or the beam above it, at one place: changes are whole steps instead of turns by hand.</summary>
/// <remarks>Two of them without any other support stand for a beam on two motors: the tilt along the line between them is within reach, that across it is held by the guides.</remarks>
/// <example><code>PoweredScrew left = PoweredScrew.At("left", x, y, LeadScrew.Of(Measured.Exact(Length.FromMillimeters(8))));</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PoweredScrew : AdjustableSupport
{
    private PoweredScrew(string name, Length x, Length y, LeadScrew drive, bool wholeFullSteps)
        : base(name, x, y)
    {
        Drive = drive;
        WholeFullSteps = wholeFullSteps;
    }

    /// <summary>Screw and motor.</summary>
    public LeadScrew Drive { get; }

    /// <summary>Whether moves are rounded to whole full steps, which repeat better than microsteps (common practice, no source).</summary>
    public bool WholeFullSteps { get; }

    /// <summary>The step to which moves are rounded.</summary>
    public Measured<Length> Step => WholeFullSteps ? Drive.FullStep : Drive.Microstep;

    internal override Measured<Length> TurnLead => Drive.Lead;

    internal override double Grain => Step.SiValue;

    /// <summary>A powered screw.</summary>
    /// <param name="name">What the person calls it; not empty.</param>
    /// <param name="x">Position along x, in the frame of the probe points.</param>
    /// <param name="y">Position along y, in the frame of the probe points.</param>
    /// <param name="drive">Screw and motor.</param>
    /// <param name="wholeFullSteps">Whether to round moves to whole full steps; microsteps if not stated.</param>
    /// <returns>The screw.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite.</exception>
    public static PoweredScrew At(string name, Length x, Length y, LeadScrew drive, bool wholeFullSteps = false) =>
        new(name, x, y, Guard.NotNull(drive), wholeFullSteps);
}
