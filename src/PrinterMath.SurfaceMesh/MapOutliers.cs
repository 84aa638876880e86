using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using MathNet.Numerics.Distributions;
using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh;

/// <summary>Readings of a map that their neighbours do not bear out: named, never dropped.</summary>
/// <remarks>
/// <para>Each node is predicted from its eight neighbours, by a quadratic surface through them by least squares; at the border and beside missing nodes the window is moved or
/// widened. What it is off by, divided by √(1 + Σw²) with the weights w of the prediction, has the scatter of one reading. The worst is set aside, its neighbours are predicted
/// without it, and the scale S is the median of their absolute values over the rest of the map times 1.4826, and not less than the probe's own uncertainty. If |e|/S is above the
/// threshold it is set aside, and the next one is looked for, up to a fifth of the nodes. At last each of them is judged once more by the nodes that are left.</para>
/// <para>Threshold: Student's t for a chance of <c>falseAlarmProbability</c> that any of n sound nodes passes it, with 0.37 n degrees of freedom, which is what the median
/// of absolute values is worth. A feature narrower than two spacings looks the same as a wrong reading: probe the place again before it is left out. Where the surface bends much
/// between nodes, S is that bending, and small errors hide in it.</para>
/// Source: Hampel 1974, The influence curve and its role in robust estimation, Journal of the American Statistical Association 69 (scale and rule; efficiency 0.37 from memory);
/// the leave-one-out residual, Allen 1974, Technometrics 16 (from memory).
/// </remarks>
/// <example><code>
/// MapOutliers outliers = MapOutliers.Find(grid);
/// foreach (MapOutlier outlier in outliers.Outliers) { /* probe outlier.Place again */ }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MapOutliers
{
    private const double Efficiency = 0.37;
    private const int Fewest = 9;
    private const double MostScore = 1e6;

    private readonly ReadOnlyCollection<MapOutlier> _outliers;
    private readonly ReadOnlyCollection<Finding> _findings;
    private readonly ReadOnlyCollection<ProbePoint> _remaining;
    private readonly double _scale;

    private MapOutliers(IEnumerable<MapOutlier> outliers, IEnumerable<ProbePoint> remaining, double scale, double threshold, IEnumerable<Finding> findings)
    {
        _outliers = Array.AsReadOnly([.. outliers]);
        _remaining = Array.AsReadOnly([.. remaining]);
        _findings = Array.AsReadOnly([.. findings]);
        _scale = scale;
        Threshold = threshold;
    }

    /// <summary>The readings, the one that stands out most first; empty if there are none.</summary>
    public IReadOnlyList<MapOutlier> Outliers => _outliers;

    /// <summary>The probed nodes without the outliers, for a grid or a fit that leaves them out on purpose.</summary>
    public IReadOnlyList<ProbePoint> RemainingPoints => _remaining;

    /// <summary>S: what deviations from neighbours are usually, noise and shape together.</summary>
    public UnitsNet.Length Scale => UnitsNet.Length.FromMeters(_scale);

    /// <summary>The score above which a reading is named, a ratio.</summary>
    public double Threshold { get; }

    /// <summary>One <see cref="SurfaceFindings.MapOutlier"/> for each outlier, and <see cref="SurfaceFindings.MapTooSmall"/> where there are too few nodes to judge.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Looks for readings that stand out.</summary>
    /// <param name="grid">The grid; nodes that were not probed are left out.</param>
    /// <param name="falseAlarmProbability">Chance that a sound map has any outlier named, greater than 0 and less than 1.</param>
    /// <returns>The outliers. A grid with fewer than nine probed nodes, or fewer than three columns or rows, has none, and a finding says so.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The probability is out of range.</exception>
    public static MapOutliers Find(ProbedGrid grid, double falseAlarmProbability = 0.01)
    {
        Guard.NotNull(grid);
        Guard.StrictlyBetween(falseAlarmProbability, 0, 1);
        int probed = grid.Points.Count;
        if (probed < Fewest || grid.Columns < 3 || grid.Rows < 3)
        {
            return new MapOutliers([], grid.Points, 0, 0, [MapFindings.TooSmall(probed)]);
        }

        double threshold = StudentT.InvCDF(0, 1, Math.Max(1, Efficiency * probed), 1 - (falseAlarmProbability / (2 * probed)));
        var neighbours = new NeighbourPrediction(grid.Nodes);
        List<int> suspects = [];
        while (suspects.Count < probed / 5)
        {
            (int node, double error) = neighbours.Worst();
            neighbours.SetAside(node);
            if (!(error > threshold * neighbours.Scale()))
            {
                neighbours.Restore(node);
                break;
            }

            suspects.Add(node);
        }

        List<MapOutlier> outliers = [.. suspects.Select(node => Again(grid, neighbours, node, threshold)).OfType<MapOutlier>().OrderByDescending(outlier => outlier.Score)];
        IEnumerable<ProbePoint> remaining = grid.Points.Where(p => !outliers.Exists(o => o.Place.XMeters == p.XMeters && o.Place.YMeters == p.YMeters));
        return new MapOutliers(outliers, remaining, neighbours.Scale(), threshold, outliers.Select(MapFindings.Outlier));
    }

    /// <summary>A sound node may have been the worst because of a wrong one beside it: each is judged once more by the nodes that are left.</summary>
    private static MapOutlier? Again(ProbedGrid grid, NeighbourPrediction neighbours, int node, double threshold)
    {
        double scale = neighbours.Scale();
        neighbours.Restore(node);
        double error = neighbours.Error(node);
        if (!(error > threshold * scale))
        {
            return null;
        }

        neighbours.SetAside(node);
        (int column, int row) = (node % grid.Columns, node / grid.Columns);
        return new MapOutlier(
            new GridNode(column, row),
            SurfacePosition.FromMeters(grid.ColumnMeters[column], grid.RowMeters[row]),
            grid.Nodes.Heights[node],
            neighbours.Expected(node),
            error / Math.Max(scale, error / MostScore));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>How many, and the scale.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{_outliers.Count} outlier(s); nodes usually lie {_scale * 1e6:0.##} µm off their neighbours");
}
