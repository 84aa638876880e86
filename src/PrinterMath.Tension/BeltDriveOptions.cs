using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>What is known of a drive besides its belts' ways. What is not stated is a range that widens every answer; all these ranges are common practice, no source.</summary>
public sealed record BeltDriveOptions
{
    /// <summary>Mass that moves along x: the head; on a single axis all that its belt moves.</summary>
    /// <value>Anywhere between 0.2 and 0.7 kg, if null; on a single axis between 0.2 and 1.5 kg.</value>
    public Measured<Mass>? MassX { get; init; }

    /// <summary>Mass that moves along y on a crossed drive: the beam and all that it carries. Not used on a single axis.</summary>
    /// <value>Anywhere between 0.5 and 1.5 kg, if null.</value>
    public Measured<Mass>? MassY { get; init; }

    /// <summary>Friction of the guides, as a force at one belt.</summary>
    /// <value>Anywhere between 0.5 and 4 N, if null.</value>
    public Measured<Force>? Friction { get; init; }

    /// <summary>Width of the belt.</summary>
    /// <value>6 mm.</value>
    public Length BeltWidth { get; init; } = Length.FromMillimeters(6);

    /// <summary>Tension that the belt carries for its life, for each length of width, see the maker's working strength.</summary>
    /// <value>Anywhere between 4 and 15 N/mm, if null, for glass-fibre belts of 2 or 3 mm pitch.</value>
    public Measured<ForcePerLength>? WorkingStrength { get; init; }

    /// <summary>Largest radial load of the motor shaft as its maker states it.</summary>
    /// <value>Null: not known. Then it does not bind; above a typical 28 N (motor with a 42 mm face, 20 mm from it) a finding warns.</value>
    public Measured<Force>? ShaftLoad { get; init; }

    /// <summary>Largest load of an idler with its bearings and pin.</summary>
    /// <value>Anywhere between 80 and 300 N, if null.</value>
    public Measured<Force>? IdlerLoad { get; init; }

    /// <summary>Friction coefficient of the ball bearings in idlers and motor, a ratio: moment = ½·coefficient·load·bore.</summary>
    /// <value>Anywhere between 0.001 and 0.005, if null (deep groove ball bearings 0.0015, seals and grease add to it; from memory of bearing makers' catalogues).</value>
    public Measured<double>? BearingFriction { get; init; }

    /// <summary>Bore of those bearings.</summary>
    /// <value>5 mm.</value>
    public Length BearingBore { get; init; } = Length.FromMillimeters(5);

    /// <summary>Share of its tension that the belt loses to bending and meshing at each pulley, a ratio.</summary>
    /// <value>Anywhere between 0.0005 and 0.004, if null (common practice, no source).</value>
    public Measured<double>? BendingLoss { get; init; }

    /// <summary>Coefficient of sliding friction on pins that do not turn.</summary>
    /// <value>Anywhere between 0.1 and 0.3, if null. Not used where there is no <see cref="PulleyKind.SlidingPin"/>.</value>
    public Measured<double>? SlidingFriction { get; init; }

    /// <summary>Inertia of one motor pulley with what else turns with it.</summary>
    /// <value>Anywhere between 1 and 10 g·cm², if null.</value>
    public Measured<MassMomentOfInertia>? PulleyInertia { get; init; }
}
