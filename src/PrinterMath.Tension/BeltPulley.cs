using System.Diagnostics;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>A pulley, idler or pin that a belt bends around.</summary>
/// <remarks>The radius is that of the belt's pitch line: p·z/(2π) for z teeth of pitch p, and for a smooth idler its own radius plus the distance from belt surface to cords.</remarks>
/// <example><code>
/// var motor = new BeltPulley("motor A", PulleyKind.Motor, HeadPosition.FromMillimeters(0, 0), BeltPulley.PitchRadius(Length.FromMillimeters(2), 20), WrapSide.Right);
/// </code></example>
[DebuggerDisplay("{Name,nq}")]
public sealed class BeltPulley
{
    /// <summary>A pulley.</summary>
    /// <param name="name">What the person calls it; not empty.</param>
    /// <param name="kind">What it does.</param>
    /// <param name="centre">Its centre: in the frame, or with the head at (0, 0) when it travels.</param>
    /// <param name="pitchRadius">Radius of the pitch line, greater than zero.</param>
    /// <param name="side">Side of the belt on which the centre lies.</param>
    /// <param name="ridesOn">What it travels with.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The radius is not positive, or an enumeration holds no named value.</exception>
    public BeltPulley(string name, PulleyKind kind, HeadPosition centre, Length pitchRadius, WrapSide side, RidesOn ridesOn = RidesOn.Frame)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name;
        Kind = Enum.IsDefined(kind) ? kind : throw Guard.Out(nameof(kind), kind, "one of the named kinds");
        Side = Enum.IsDefined(side) ? side : throw Guard.Out(nameof(side), side, "one of the named sides");
        Node = new BeltNode(centre, ridesOn, Guard.Positive(pitchRadius.Meters, nameof(pitchRadius)) * (side == WrapSide.Left ? 1 : -1));
    }

    /// <summary>What the person calls it.</summary>
    public string Name { get; }

    /// <summary>What it does.</summary>
    public PulleyKind Kind { get; }

    /// <summary>Its centre: in the frame, or with the head at (0, 0) when it travels.</summary>
    public HeadPosition Centre => Node.Base;

    /// <summary>Radius of the pitch line.</summary>
    public Length Radius => Length.FromMeters(Node.Radius);

    /// <summary>Side of the belt on which the centre lies.</summary>
    public WrapSide Side { get; }

    /// <summary>What it travels with.</summary>
    public RidesOn RidesOn => Node.RidesOn;

    internal BeltNode Node { get; }

    /// <summary>Pitch radius r = p·z/(2π) of a toothed pulley.</summary>
    /// <param name="pitch">Tooth pitch p, greater than zero.</param>
    /// <param name="teeth">Number of teeth z, 6 or more.</param>
    /// <returns>The radius.</returns>
    /// <remarks>Source: d = p·z/π, any handbook of synchronous drives.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The pitch is not positive or there are fewer than 6 teeth.</exception>
    public static Length PitchRadius(Length pitch, int teeth) =>
        Length.FromMeters(Guard.Positive(pitch.Meters, nameof(pitch)) * Guard.AtLeast(teeth, 6) / (2 * Math.PI));

    /// <summary>The same pulley seen in a mirror that exchanges left and right.</summary>
    internal BeltPulley Mirrored(double axis, string name) => new(
        name, Kind, Node.Mirrored(axis), Radius, Side == WrapSide.Left ? WrapSide.Right : WrapSide.Left, RidesOn);
}
