using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Heights probed at the nodes of a rectangular grid; spacings may vary, nodes may be missing. z is positive upwards.</summary>
/// <remarks>
/// Points may come in any order. Those of one place are averaged: u = √(Σuᵢ²)/n. The standard uncertainty of a reading is the point's own, else
/// <see cref="ProbedGridOptions.Repeatability"/>, else the scatter of repeated places pooled, s² = Σ(z − z̄)²/Σ(n − 1); else it is unknown.
/// A grid has at least two columns, two rows, three probed nodes, and half of its nodes probed. Each node stands at the mean position of its column and
/// row, so a point is moved by no more than the width of its column.
/// Source: JCGM 100:2008 (GUM), 4.2.3 and 4.2.4 (pooled estimate).
/// </remarks>
/// <example><code>ProbedGrid grid = ProbedGrid.FromPoints(points, new ProbedGridOptions { Repeatability = Length.FromMicrometers(8) });</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ProbedGrid
{
    private readonly GridNodes _nodes;
    private readonly ReadOnlyCollection<Finding> _findings;
    private readonly ReadOnlyCollection<GridNode> _missing;

    private ProbedGrid(GridNodes nodes)
    {
        _nodes = nodes;
        GridNode[] missing =
        [
            .. from row in Enumerable.Range(0, nodes.Y.Count)
               from column in Enumerable.Range(0, nodes.X.Count)
               where nodes.Readings[nodes.Index(column, row)] == 0
               select new GridNode(column, row),
        ];
        _missing = Array.AsReadOnly(missing);
        _findings = Array.AsReadOnly<Finding>(missing.Length == 0 ? [.. nodes.Findings] : [.. nodes.Findings, GridFindings.Missing(missing.Length, nodes.Readings.Length)]);
    }

    /// <summary>Number of columns, along x.</summary>
    public int Columns => _nodes.X.Count;

    /// <summary>Number of rows, along y.</summary>
    public int Rows => _nodes.Y.Count;

    /// <summary>The rectangle the nodes span.</summary>
    public SurfaceRectangle Rectangle => new(_nodes.X.First, _nodes.Y.First, _nodes.X.Last, _nodes.Y.Last);

    /// <summary>Positions of the columns along x in metres, ascending.</summary>
    public ReadOnlySpan<double> ColumnMeters => _nodes.X.Nodes;

    /// <summary>Positions of the rows along y in metres, ascending.</summary>
    public ReadOnlySpan<double> RowMeters => _nodes.Y.Nodes;

    /// <summary>Nodes that were not probed.</summary>
    public IReadOnlyList<GridNode> MissingNodes => _missing;

    /// <summary>Whether every node was probed.</summary>
    public bool IsComplete => _missing.Count == 0;

    /// <summary>Whether the heights carry a standard uncertainty.</summary>
    public bool HasUncertainty => _nodes.HasUncertainty;

    /// <summary>What was noticed, see <see cref="SurfaceFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>The probed nodes as points, row by row, with their uncertainty where it is known.</summary>
    public IReadOnlyList<ProbePoint> Points =>
    [
        .. from row in Enumerable.Range(0, Rows)
           from column in Enumerable.Range(0, Columns)
           let i = _nodes.Index(column, row)
           where _nodes.Readings[i] > 0
           select ProbePoint.FromMeters(_nodes.X.Nodes[column], _nodes.Y.Nodes[row], _nodes.Heights[i], _nodes.StandardUncertainties[i]),
    ];

    internal GridNodes Nodes => _nodes;

    /// <summary>A grid from points in any order.</summary>
    /// <param name="points">The points.</param>
    /// <param name="options">How to sort them; null for the defaults.</param>
    /// <returns>The grid.</returns>
    /// <exception cref="ArgumentException">The points form no grid: one row, one column, fewer than half of the nodes, or positions that run into each other.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static ProbedGrid FromPoints(IReadOnlyList<ProbePoint> points, ProbedGridOptions? options = null)
    {
        options ??= new ProbedGridOptions();
        double tolerance = Guard.NonNegative(options.PositionTolerance.Meters, nameof(options));
        ProbePoint[] copy = [.. Guard.NotNull(points)];
        int[] column = new int[copy.Length];
        int[] row = new int[copy.Length];
        double[] xs = GridAxis.Cluster([.. copy.Select(p => p.XMeters)], tolerance, column, "x");
        double[] ys = GridAxis.Cluster([.. copy.Select(p => p.YMeters)], tolerance, row, "y");
        RequireTwo(xs.Length, ys.Length);
        return new ProbedGrid(GridNodes.Average(new GridAxis(xs), new GridAxis(ys), copy, column, row, options));
    }

    /// <summary>A complete grid from its axes and one reading for each node.</summary>
    /// <param name="columnMeters">Positions along x in metres, ascending, at least two.</param>
    /// <param name="rowMeters">Positions along y in metres, ascending, at least two.</param>
    /// <param name="heightMeters">Heights in metres, row by row from the smallest y; each row from the smallest x.</param>
    /// <param name="options">The repeatability; null for none.</param>
    /// <returns>The grid.</returns>
    /// <exception cref="ArgumentException">One row, one column, positions not ascending, or not one height for each node.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or an option is out of range.</exception>
    public static ProbedGrid FromHeights(
        ReadOnlySpan<double> columnMeters, ReadOnlySpan<double> rowMeters, ReadOnlySpan<double> heightMeters, ProbedGridOptions? options = null)
    {
        RequireTwo(columnMeters.Length, rowMeters.Length);
        RequireAscending(columnMeters, nameof(columnMeters));
        RequireAscending(rowMeters, nameof(rowMeters));
        Guard.AllFinite(heightMeters);
        int count = columnMeters.Length * rowMeters.Length;
        if (heightMeters.Length != count)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"heightMeters has {heightMeters.Length} entries; {columnMeters.Length} columns by {rowMeters.Length} rows need {count}."),
                nameof(heightMeters));
        }

        ProbePoint[] points = new ProbePoint[count];
        int[] column = new int[count];
        int[] row = new int[count];
        for (int i = 0; i < count; i++)
        {
            column[i] = i % columnMeters.Length;
            row[i] = i / columnMeters.Length;
            points[i] = ProbePoint.FromMeters(columnMeters[column[i]], rowMeters[row[i]], heightMeters[i]);
        }

        return new ProbedGrid(GridNodes.Average(
            new GridAxis(columnMeters.ToArray()), new GridAxis(rowMeters.ToArray()), points, column, row, options ?? new ProbedGridOptions()));
    }

    /// <summary>Whether a node was probed.</summary>
    /// <param name="node">The node.</param>
    /// <returns>Whether it was.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The grid has no such node.</exception>
    public bool IsProbed(GridNode node) => _nodes.Readings[IndexOf(node)] > 0;

    /// <summary>Height of a node, if it was probed; its uncertainty is in <see cref="Points"/>.</summary>
    /// <param name="node">The node.</param>
    /// <param name="height">Mean of its readings; zero when there is none.</param>
    /// <returns>Whether it was probed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The grid has no such node.</exception>
    public bool TryGetHeight(GridNode node, out Length height)
    {
        int i = IndexOf(node);
        height = Length.FromMeters(_nodes.Heights[i]);
        return _nodes.Readings[i] > 0;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Size, rectangle and what is missing.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Columns} x {Rows} nodes, {Rectangle}, {_missing.Count} missing");

    /// <summary>Whether columns and rows agree to within a hundredth of the smallest spacing.</summary>
    internal bool HasSameNodesAs(ProbedGrid other) => Agree(ColumnMeters, other.ColumnMeters) && Agree(RowMeters, other.RowMeters);

    private static bool Agree(ReadOnlySpan<double> one, ReadOnlySpan<double> other)
    {
        bool same = one.Length == other.Length;
        double smallest = double.PositiveInfinity;
        for (int i = 1; i < one.Length; i++)
        {
            smallest = Math.Min(smallest, one[i] - one[i - 1]);
        }

        for (int i = 0; same && i < one.Length; i++)
        {
            same = Math.Abs(one[i] - other[i]) <= 0.01 * smallest;
        }

        return same;
    }

    private int IndexOf(GridNode node) => _nodes.Index(
        node.Column >= 0 && node.Column < Columns ? node.Column : throw Guard.Out(nameof(node), node, "a node of this grid"),
        node.Row >= 0 && node.Row < Rows ? node.Row : throw Guard.Out(nameof(node), node, "a node of this grid"));

    private static void RequireTwo(int columns, int rows)
    {
        if (columns < 2 || rows < 2)
        {
            throw Guard.Refused("points", string.Create(
                CultureInfo.InvariantCulture, $"The points form {columns} column(s) and {rows} row(s); a surface needs at least 2 of each."));
        }
    }

    private static void RequireAscending(ReadOnlySpan<double> positions, string name)
    {
        Guard.AllFinite(positions, name);
        for (int i = 1; i < positions.Length; i++)
        {
            if (positions[i] <= positions[i - 1])
            {
                throw Guard.Refused(
                    name, string.Create(CultureInfo.InvariantCulture, $"{name} must ascend; entry {i} is {positions[i]} after {positions[i - 1]}."));
            }
        }
    }
}
