using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>The way of one belt from its first end over pulleys to its second: free spans, wrap angles and length as functions of the head's position.</summary>
/// <remarks>
/// <para>Span k runs from place k to place k + 1, place 0 being the first end, places 1 to n the pulleys. Length = Σ L_k + Σ r_i·θ_i, exact for tight belts in one plane.
/// The two strands are what lies before and after the motor pulley, without the part that its teeth hold.</para>
/// <para>Reading lengths and angles allocates nothing.</para>
/// </remarks>
/// <example><code>
/// BeltPath belt = SingleAxisLayout.Path(dimensions);
/// Length free = belt.SpanLength(0, HeadPosition.FromMillimeters(120, 0));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class BeltPath
{
    private const double LargestWrap = 1.5 * Math.PI;
    private readonly BeltNode[] _nodes;
    private readonly ReadOnlyCollection<BeltPulley> _pulleys;
    private readonly int _motor;

    /// <summary>A belt path.</summary>
    /// <param name="name">What the person calls the belt; not empty.</param>
    /// <param name="first">Where it begins.</param>
    /// <param name="pulleys">What it bends around, in order; exactly one is the motor's.</param>
    /// <param name="second">Where it ends.</param>
    /// <exception cref="ArgumentException">The name is empty, or there is not exactly one motor pulley.</exception>
    public BeltPath(string name, BeltEnd first, IReadOnlyList<BeltPulley> pulleys, BeltEnd second)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name;
        First = Guard.NotNull(first);
        Second = Guard.NotNull(second);
        _pulleys = Array.AsReadOnly(Guard.NotNull(pulleys).ToArray());
        int motors = _pulleys.Count(pulley => Guard.NotNull(pulley, nameof(pulleys)).Kind == PulleyKind.Motor);
        if (motors != 1)
        {
            throw Guard.Refused(nameof(pulleys), $"Belt {name} has {motors} motor pulleys; it must have one.");
        }

        _nodes = [first.Node, .. _pulleys.Select(pulley => pulley.Node), second.Node];
        _motor = 1 + Enumerable.Range(0, _pulleys.Count).First(i => _pulleys[i].Kind == PulleyKind.Motor);
    }

    /// <summary>What the person calls the belt.</summary>
    public string Name { get; }

    /// <summary>Where it begins.</summary>
    public BeltEnd First { get; }

    /// <summary>Where it ends.</summary>
    public BeltEnd Second { get; }

    /// <summary>What it bends around, in order.</summary>
    public IReadOnlyList<BeltPulley> Pulleys => _pulleys;

    /// <summary>Number of free spans: one more than pulleys.</summary>
    public int SpanCount => _nodes.Length - 1;

    /// <summary>Name of a span: the places between which it hangs free.</summary>
    /// <param name="span">Which, from 0.</param>
    /// <returns>The name.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such span.</exception>
    public string SpanName(int span)
    {
        Guard.Between(span, 0, SpanCount - 1);
        return $"{PlaceName(span)} to {PlaceName(span + 1)}";
    }

    /// <summary>Free length of a span, from one line of contact to the next.</summary>
    /// <param name="span">Which, from 0.</param>
    /// <param name="head">Where the head is.</param>
    /// <returns>The length.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such span, or with the head there two pulleys overlap.</exception>
    public Length SpanLength(int span, HeadPosition head) => Length.FromMeters(SpanMeters(span, head));

    /// <summary>Angle over which the belt lies on a pulley, from 0 to 270°.</summary>
    /// <param name="pulley">Which, from 0.</param>
    /// <param name="head">Where the head is.</param>
    /// <returns>The angle.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such pulley, pulleys overlap, or the belt does not touch it on the stated side.</exception>
    public Angle Wrap(int pulley, HeadPosition head)
    {
        Guard.Between(pulley, 0, _pulleys.Count - 1);
        return Angle.FromRadians(WrapRadians(pulley + 1, head));
    }

    /// <summary>Length of the whole pitch line, end to end. It must not change with the head: see <see cref="PathConsistency"/>.</summary>
    /// <param name="head">Where the head is.</param>
    /// <returns>The length.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Pulleys overlap, or the belt does not touch one on the stated side.</exception>
    public Length TotalLength(HeadPosition head) => Length.FromMeters(Meters(0, _nodes.Length - 1, head) + (MotorRadius * WrapRadians(_motor, head)));

    /// <summary>Length of the belt from its first end to the motor pulley.</summary>
    /// <param name="head">Where the head is.</param>
    /// <returns>The length.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Pulleys overlap, or the belt does not touch one on the stated side.</exception>
    public Length FirstStrand(HeadPosition head) => Length.FromMeters(Meters(0, _motor, head));

    /// <summary>Length of the belt from the motor pulley to its second end.</summary>
    /// <param name="head">Where the head is.</param>
    /// <returns>The length.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Pulleys overlap, or the belt does not touch one on the stated side.</exception>
    public Length SecondStrand(HeadPosition head) => Length.FromMeters(Meters(_motor, _nodes.Length - 1, head));

    /// <summary>Invariant text.</summary>
    /// <returns>Name and places.</returns>
    public override string ToString() => $"belt {Name}: {string.Join(" - ", Enumerable.Range(0, _nodes.Length).Select(PlaceName))}";

    internal double MotorRadius => _nodes[_motor].Radius;

    internal double MotorWrap(HeadPosition head) => WrapRadians(_motor, head);

    internal double SpanMeters(int span, HeadPosition head)
    {
        Guard.Between(span, 0, SpanCount - 1);
        return TangentAt(span, head).Length;
    }

    internal double WrapRadians(int place, HeadPosition head)
    {
        double wrap = Tangent.Wrap(TangentAt(place - 1, head), TangentAt(place, head), _nodes[place].SignedRadius);
        return wrap <= LargestWrap
            ? wrap
            : throw Guard.Out(nameof(head), head, string.Create(
                CultureInfo.InvariantCulture, $"where the belt touches {PlaceName(place)}; it would have to go {wrap * 180 / Math.PI:0}° around it, so its side of wrap or a centre is wrong"));
    }

    internal BeltPath Mirrored(double axis, string name, Func<string, string> rename) => new(
        name,
        First.Mirrored(axis, rename(First.Name)),
        [.. _pulleys.Select(pulley => pulley.Mirrored(axis, rename(pulley.Name)))],
        Second.Mirrored(axis, rename(Second.Name)));

    /// <summary>Spans and wraps between two places, without the wraps at those places and without that on the motor.</summary>
    private double Meters(int from, int to, HeadPosition head)
    {
        double sum = 0;
        for (int k = from; k < to; k++)
        {
            sum += TangentAt(k, head).Length;
            sum += k > from && k != _motor ? _nodes[k].Radius * WrapRadians(k, head) : 0;
        }

        return sum;
    }

    private Tangent TangentAt(int span, HeadPosition head)
    {
        BeltNode from = _nodes[span];
        BeltNode to = _nodes[span + 1];
        double dx = to.X(head) - from.X(head);
        double dy = to.Y(head) - from.Y(head);
        double reach = from.Radius + to.Radius;
        return (dx * dx) + (dy * dy) > reach * reach
            ? Tangent.Between(from, to, head)
            : throw Guard.Out(nameof(head), head, $"where {PlaceName(span)} and {PlaceName(span + 1)} do not overlap");
    }

    private string PlaceName(int place) => place == 0 ? First.Name : place <= _pulleys.Count ? _pulleys[place - 1].Name : Second.Name;
}
