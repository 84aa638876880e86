using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>The narrowest zone between two parallel planes that holds all points, as read: in z (Chebyshev fit), or square to the planes as flatness is defined.</summary>
/// <remarks>
/// <para>In z: min over a, b, c of max(z − a − b·x − c·y) − min(…), a linear program, solved exactly by exchange. Orthogonal: the width of the convex hull, reached by a face against
/// a vertex or an edge against an edge; every such pair is looked at, so the minimum is the global one. Orthogonal is smaller than in z by about √(1 + b² + c²).</para>
/// <para>The zone has no covariance: it rests on four points, its limits move in jumps from one set to the next, and noise only ever widens it. For an interval and a correction for
/// noise use <see cref="PlaneFlatness"/>. Nor has it leverages: a point inside the zone has no influence at all.</para>
/// <para>Findings: <c>plane.collinear</c> (blocking), <c>zone.notUnique</c> (note: the zone is as narrow in other positions), <c>plane.unit.suspect</c> (caution).</para>
/// <para>Source: ISO 12781-1:2011, minimum zone reference planes; ISO 1101, flatness (both from memory). Stiefel 1959, Numerische Mathematik 1, 1 (exchange); Houle, Toussaint 1988, IEEE
/// Transactions on Pattern Analysis and Machine Intelligence 10, 761 (width of a set; both from memory).</para>
/// </remarks>
/// <example><code>Length flatness = MinimumZone.Orthogonal(points).Width;</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MinimumZone
{
    /// <summary>A point this near to a limit, as part of the width, touches it.</summary>
    private const double Touch = 1e-9;

    private readonly Finding[] _findings;
    private readonly double[] _deviations;
    private readonly double _width;
    private readonly (double X, double Y, double Z) _normal;
    private readonly double _offset;

    private MinimumZone(bool orthogonal, double[] deviations, double width, (double X, double Y, double Z) normal, double offset, params Finding?[] findings)
    {
        IsOrthogonal = orthogonal;
        _deviations = deviations;
        _width = width;
        _normal = normal;
        _offset = offset;
        _findings = [.. findings.OfType<Finding>()];
    }

    /// <summary>Whether widths are taken square to the planes; else along z.</summary>
    public bool IsOrthogonal { get; }

    /// <summary>What was noticed.</summary>
    public IReadOnlyList<Finding> Findings => Array.AsReadOnly(_findings);

    /// <summary>Whether the points fix a zone.</summary>
    public bool IsDeterminate => _deviations.Length > 0;

    /// <summary>Distance of the two planes, as read, zero or more.</summary>
    /// <exception cref="IndeterminateException">The points lie in one line.</exception>
    public Length Width => IsDeterminate ? Length.FromMeters(_width) : throw Indeterminate();

    /// <summary>Component along x of the unit normal of the planes, which points upwards; a ratio.</summary>
    /// <exception cref="IndeterminateException">The points lie in one line.</exception>
    public double NormalX => IsDeterminate ? _normal.X : throw Indeterminate();

    /// <summary>Component along y of the unit normal of the planes; a ratio.</summary>
    /// <exception cref="IndeterminateException">The points lie in one line.</exception>
    public double NormalY => IsDeterminate ? _normal.Y : throw Indeterminate();

    /// <summary>Component along z of the unit normal of the planes, zero or more; a ratio.</summary>
    /// <exception cref="IndeterminateException">The points lie in one line.</exception>
    public double NormalZ => IsDeterminate ? _normal.Z : throw Indeterminate();

    /// <summary>Distance of each point from the plane in the middle of the zone, positive above it, in order; at most half the width in size.</summary>
    /// <exception cref="IndeterminateException">The points lie in one line.</exception>
    public IReadOnlyList<Length> Deviations => IsDeterminate ? [.. _deviations.Select(d => Length.FromMeters(d))] : throw Indeterminate();

    /// <summary>Indices of the points on the upper plane, in order.</summary>
    /// <exception cref="IndeterminateException">The points lie in one line.</exception>
    public IReadOnlyList<int> UpperPoints => Touching(1);

    /// <summary>Indices of the points on the lower plane, in order.</summary>
    /// <exception cref="IndeterminateException">The points lie in one line.</exception>
    public IReadOnlyList<int> LowerPoints => Touching(-1);

    /// <summary>The narrowest zone in z.</summary>
    /// <param name="points">At least three probe points; their uncertainties play no part.</param>
    /// <param name="options">Of these <see cref="PlaneFitOptions.PlacementUncertainty"/> alone counts here; null for its default.</param>
    /// <returns>The zone, or a result whose findings say what the points lack.</returns>
    /// <exception cref="ArgumentException">Fewer than three points.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The placement uncertainty is out of range.</exception>
    public static MinimumZone InZ(IReadOnlyList<ProbePoint> points, PlaneFitOptions? options = null)
    {
        if (Frame(points, options, out MinimumZone blocked) is not ZoneFrame frame)
        {
            return blocked;
        }

        var solver = new MinimaxPlane(frame.U, frame.V);
        solver.Solve(frame.R);
        (double x, double y, double z) = frame.Scale > 0 ? frame.Normal(-solver.SlopeX, -solver.SlopeY, 1) : Flat(frame);
        double[] deviations = new double[frame.R.Length];
        for (int i = 0; i < deviations.Length; i++)
        {
            deviations[i] = frame.Scale * (frame.R[i] - solver.Height(i));
        }

        double size = Math.Sqrt((x * x) + (y * y) + (z * z));
        return new MinimumZone(
            false,
            deviations,
            2 * frame.Scale * solver.HalfWidth,
            (x / size, y / size, z / size),
            Middle(points, (x / size, y / size, z / size)),
            ZoneUniqueness.IsUnique(frame, solver) ? null : NotUnique(),
            Units(frame));
    }

    /// <summary>The narrowest zone square to its planes: flatness as ISO 1101 defines it, as read.</summary>
    /// <param name="points">At least three probe points; their uncertainties play no part.</param>
    /// <param name="options">Of these <see cref="PlaneFitOptions.PlacementUncertainty"/> alone counts here; null for its default.</param>
    /// <returns>The zone, or a result whose findings say what the points lack.</returns>
    /// <exception cref="ArgumentException">Fewer than three points.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The placement uncertainty is out of range.</exception>
    public static MinimumZone Orthogonal(IReadOnlyList<ProbePoint> points, PlaneFitOptions? options = null)
    {
        if (Frame(points, options, out MinimumZone blocked) is not ZoneFrame frame)
        {
            return blocked;
        }

        (double x, double y, double z) = Flat(frame);
        if (frame.Scale > 0 && HullWidth.Of(frame.U, frame.V, frame.R, frame.NormalLength) is ZonePair pair)
        {
            (x, y, z) = frame.Normal(pair.NormalX, pair.NormalY, pair.NormalZ);
            double size = Math.Sqrt((x * x) + (y * y) + (z * z)) * (z < 0 ? -1 : 1);
            (x, y, z) = (x / size, y / size, z / size);
            double[] along = [.. Enumerable.Range(0, frame.R.Length).Select(i => ((pair.NormalX * frame.U[i]) + (pair.NormalY * frame.V[i]) + (pair.NormalZ * frame.R[i])) / size)];
            double middle = (along.Max() + along.Min()) / 2;
            return new MinimumZone(true, [.. along.Select(d => d - middle)], along.Max() - along.Min(), (x, y, z), Middle(points, (x, y, z)), Units(frame));
        }

        return new MinimumZone(true, new double[frame.R.Length], 0, (x, y, z), Middle(points, (x, y, z)), Units(frame));
    }

    /// <summary>Height of the middle plane at a place, positive upwards.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <returns>The height.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite.</exception>
    /// <exception cref="IndeterminateException">The points lie in one line, or the zone stands upright.</exception>
    public Length HeightAt(Length x, Length y)
    {
        double px = Guard.Finite(x.Meters, nameof(x));
        double py = Guard.Finite(y.Meters, nameof(y));
        return NormalZ > 0
            ? Length.FromMeters((_offset - (_normal.X * px) - (_normal.Y * py)) / _normal.Z)
            : throw new IndeterminateException("The zone stands upright: it has no height at a place.");
    }

    /// <summary>The width, where the points fix a zone.</summary>
    /// <param name="width">The width.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetWidth(out Length width)
    {
        width = Length.FromMeters(_width);
        return IsDeterminate;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The width, or what the points lack.</returns>
    public override string ToString() => IsDeterminate
        ? string.Create(CultureInfo.InvariantCulture, $"minimum zone {(IsOrthogonal ? "orthogonal" : "in z")}: {_width * 1e6:G6} µm")
        : _findings[0].ToString();

    private static ZoneFrame? Frame(IReadOnlyList<ProbePoint> points, PlaneFitOptions? options, out MinimumZone blocked)
    {
        if (Guard.NotNull(points).Count < 3)
        {
            throw Guard.Refused(nameof(points), $"There are {points.Count} probe points; a plane needs at least 3.");
        }

        double placement = Guard.NonNegative((options ?? new PlaneFitOptions()).PlacementUncertainty.Meters, nameof(options) + ".PlacementUncertainty");
        var frame = ZoneFrame.Of([.. points], placement, out Finding? blocking);
        blocked = new MinimumZone(false, [], 0, default, 0, blocking);
        return frame;
    }

    private static (double X, double Y, double Z) Flat(ZoneFrame frame)
    {
        double b = frame.Plane.SlopeX;
        double c = frame.Plane.SlopeY;
        double size = Math.Sqrt(1 + (b * b) + (c * c));
        return (-b / size, -c / size, 1 / size);
    }

    /// <summary>n·p of the plane in the middle, as found from the points themselves.</summary>
    private static double Middle(IReadOnlyList<ProbePoint> points, (double X, double Y, double Z) n)
    {
        double low = double.MaxValue, high = double.MinValue;
        foreach (ProbePoint p in points)
        {
            double d = (n.X * p.XMeters) + (n.Y * p.YMeters) + (n.Z * p.ZMeters);
            low = Math.Min(low, d);
            high = Math.Max(high, d);
        }

        return (low + high) / 2;
    }

    private static Finding? Units(ZoneFrame frame) => UnitSuspicion.Of(frame.Axes, frame.Plane, 2 * frame.Scale);

    private static Finding NotUnique() => new(
        "zone.notUnique",
        FindingSeverity.Note,
        "The zone is as narrow in other positions: its width is certain, its tilt is not.");

    private int[] Touching(int side)
    {
        if (!IsDeterminate)
        {
            throw Indeterminate();
        }

        double limit = (_width / 2) - (Touch * _width);
        return [.. Enumerable.Range(0, _deviations.Length).Where(i => side * _deviations[i] >= limit)];
    }

    private IndeterminateException Indeterminate() => new(_findings[0]);
}
