using System.Diagnostics;
using System.Globalization;
using MathNet.Numerics.Distributions;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Whether a bed has changed between two maps of the same nodes: at all, by how much, and where.</summary>
/// <remarks>
/// <para>Differences second − first at the nodes that both hold. Their mean is the shift of the height zero, which is not a change of shape and is taken out. What is left is compared with the noise of both maps:
/// χ² = Σ ((dᵢ − d̄)/uᵢ)², uᵢ² = u₁² + u₂², d̄ weighted, with one degree of freedom less than nodes. The change is √(mean square less that of the noise). The farthest node is judged against a chance shared among all (Bonferroni).</para>
/// <para>Both maps at one temperature, else it is temperature that is compared. Noise of the two must be independent: a probe that drifts between them shows as a change. Source: χ² of paired differences about their mean, with the bound of Bonferroni (general statistics, from memory).</para>
/// </remarks>
/// <example><code>
/// MapComparison since = MapComparison.Of(lastMonth, today);
/// if (since.HasChanged) { Console.WriteLine($"by {since.Change}, most at {since.FarthestNode}"); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MapComparison
{
    private const int FewestNodes = 4;
    private readonly double[] _left;
    private readonly GridNode[] _nodes;
    private readonly double _meanNoise;
    private readonly double _farthestChance;
    private readonly double _risk;

    private MapComparison(GridNode[] nodes, double[] left, double[] uncertainties, double shift, double shiftUncertainty, double risk)
    {
        _nodes = nodes;
        _left = left;
        _risk = risk;
        Shift = Measured<Length>.FromSi(shift, shiftUncertainty);
        _meanNoise = uncertainties.Average(u => u * u);
        double square = left.Zip(uncertainties, (d, u) => d * d / (u * u)).Sum();
        ChanceProbability = 1 - ChiSquared.CDF(nodes.Length - 1, square);
        int farthest = Array.IndexOf(left, left.MaxBy(Math.Abs));
        FarthestNode = nodes[farthest];
        Farthest = Measured<Length>.FromSi(left[farthest], uncertainties[farthest]);
        _farthestChance = Math.Min(1, nodes.Length * 2 * Normal.CDF(0, 1, -Math.Abs(left[farthest]) / (uncertainties[farthest] * Math.Sqrt(1 - (1.0 / nodes.Length)))));
    }

    /// <summary>Number of nodes that both maps hold.</summary>
    public int NodeCount => _nodes.Length;

    /// <summary>Weighted mean of second less first: how far the height zero moved; positive when the second map lies higher.</summary>
    public Measured<Length> Shift { get; }

    /// <summary>Probability that noise alone leaves differences at least as large, a ratio.</summary>
    public double ChanceProbability { get; }

    /// <summary>Whether the shape has changed: noise alone would show as much with less than the chosen risk, over all nodes or at the farthest.</summary>
    public bool HasChanged => Math.Min(ChanceProbability, _farthestChance) < _risk / 2;

    /// <summary>Root mean square change of shape, the noise of both maps taken off; zero when that explains it.</summary>
    public Length Change => Length.FromMeters(Math.Sqrt(Math.Max(0, (_left.Sum(d => d * d) / (_left.Length - 1)) - _meanNoise)));

    /// <summary>The node that moved most, the shift taken out.</summary>
    public GridNode FarthestNode { get; }

    /// <summary>How far it moved, the shift taken out; positive when it rose.</summary>
    public Measured<Length> Farthest { get; }

    /// <summary>Changes in metres, the shift taken out, in the order of <see cref="Nodes"/>; positive where the surface rose.</summary>
    public ReadOnlySpan<double> ChangeMeters => _left;

    /// <summary>The nodes compared, row by row.</summary>
    public IReadOnlyList<GridNode> Nodes => Array.AsReadOnly(_nodes);

    /// <summary>Compares two maps.</summary>
    /// <param name="first">The earlier map, its repeatability known.</param>
    /// <param name="second">The later one, with the same columns and rows to within a hundredth of the smallest spacing, its repeatability known.</param>
    /// <param name="risk">Probability that an unchanged bed is called changed, a ratio.</param>
    /// <returns>The comparison.</returns>
    /// <exception cref="ArgumentException">The maps differ in their nodes, share fewer than four, or one has no uncertainty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The risk is not between 0 and 1.</exception>
    public static MapComparison Of(ProbedGrid first, ProbedGrid second, double risk = 0.05)
    {
        Guard.StrictlyBetween(risk, 0, 1);
        RequireUncertainty(Guard.NotNull(first), nameof(first));
        RequireUncertainty(Guard.NotNull(second), nameof(second));
        if (!first.HasSameNodesAs(second))
        {
            throw Guard.Refused(nameof(second), $"The nodes of the maps differ: {first} and {second}.");
        }

        GridNodes a = first.Nodes, b = second.Nodes;
        GridNode[] nodes =
        [
            .. from row in Enumerable.Range(0, first.Rows)
               from column in Enumerable.Range(0, first.Columns)
               let i = a.Index(column, row)
               where a.Readings[i] > 0 && b.Readings[i] > 0
               select new GridNode(column, row),
        ];
        if (nodes.Length < FewestNodes)
        {
            throw Guard.Refused(nameof(second), FormattableString.Invariant($"The maps share {nodes.Length} nodes; a change takes {FewestNodes} to see."));
        }

        double[] u = new double[nodes.Length], left = new double[nodes.Length];
        double weight = 0, sum = 0;
        for (int k = 0; k < nodes.Length; k++)
        {
            int i = a.Index(nodes[k].Column, nodes[k].Row);
            left[k] = b.Heights[i] - a.Heights[i];
            u[k] = double.Hypot(a.StandardUncertainties[i], b.StandardUncertainties[i]);
            weight += 1 / (u[k] * u[k]);
            sum += left[k] / (u[k] * u[k]);
        }

        double shift = sum / weight;
        for (int k = 0; k < left.Length; k++)
        {
            left[k] -= shift;
        }

        return new MapComparison(nodes, left, u, shift, 1 / Math.Sqrt(weight), risk);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Whether it changed, by how much, and where most.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{(HasChanged ? "changed" : "no change seen")}: {Change.Micrometers:0.0} µm rms, most {Farthest} at column {FarthestNode.Column}, row {FarthestNode.Row}; shift {Shift}");

    private static void RequireUncertainty(ProbedGrid grid, string name)
    {
        if (!grid.HasUncertainty)
        {
            throw Guard.Refused(name, "Nothing is known of the map's repeatability: state it, or probe some places more than once.");
        }
    }
}
