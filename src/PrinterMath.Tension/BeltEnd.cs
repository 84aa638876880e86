using System.Diagnostics;

namespace PrinterMath.Tension;

/// <summary>Where one end of a belt is held.</summary>
/// <example><code>var left = new BeltEnd("carriage left", HeadPosition.FromMillimeters(-20, 6), RidesOn.Head);</code></example>
[DebuggerDisplay("{Name,nq}")]
public sealed class BeltEnd
{
    /// <summary>An end of a belt.</summary>
    /// <param name="name">What the person calls it; not empty.</param>
    /// <param name="place">Where the pitch line is held: in the frame, or with the head at (0, 0) when it travels.</param>
    /// <param name="ridesOn">What it travels with.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The enumeration holds no named value.</exception>
    public BeltEnd(string name, HeadPosition place, RidesOn ridesOn = RidesOn.Head)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name;
        Node = new BeltNode(place, ridesOn, 0);
    }

    /// <summary>What the person calls it.</summary>
    public string Name { get; }

    /// <summary>Where the pitch line is held: in the frame, or with the head at (0, 0) when it travels.</summary>
    public HeadPosition Place => Node.Base;

    /// <summary>What it travels with.</summary>
    public RidesOn RidesOn => Node.RidesOn;

    internal BeltNode Node { get; }

    internal BeltEnd Mirrored(double axis, string name) => new(name, Node.Mirrored(axis), RidesOn);
}
