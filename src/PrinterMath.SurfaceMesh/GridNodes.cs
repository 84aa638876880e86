using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh;

/// <summary>What the nodes of a grid hold, row by row: mean height, standard uncertainty (zero when unknown), number of readings (zero when not probed).</summary>
internal sealed class GridNodes
{
    /// <summary>A false alarm about repeats in one grid of a thousand.</summary>
    private const double RareChance = 0.001;

    private GridNodes(GridAxis x, GridAxis y)
    {
        X = x;
        Y = y;
        int count = x.Count * y.Count;
        Heights = new double[count];
        StandardUncertainties = new double[count];
        Readings = new int[count];
    }

    internal GridAxis X { get; }

    internal GridAxis Y { get; }

    internal double[] Heights { get; }

    internal double[] StandardUncertainties { get; }

    internal int[] Readings { get; }

    internal double DegreesOfFreedom { get; private set; } = double.PositiveInfinity;

    internal bool HasUncertainty { get; private set; }

    internal List<Finding> Findings { get; } = [];

    internal int Index(int column, int row) => (row * X.Count) + column;

    internal static GridNodes Average(GridAxis x, GridAxis y, ProbePoint[] points, int[] column, int[] row, ProbedGridOptions options)
    {
        var nodes = new GridNodes(x, y);
        int[] nodeOf = new int[points.Length];
        for (int k = 0; k < points.Length; k++)
        {
            nodeOf[k] = nodes.Index(column[k], row[k]);
            nodes.Readings[nodeOf[k]]++;
        }

        nodes.RequireEnough();
        nodes.AverageHeights(points, nodeOf);
        nodes.SetUncertainties(points, nodeOf, PointNoise.Of(points, options.Repeatability, options.RepeatabilityDegreesOfFreedom));
        return nodes;
    }

    private void RequireEnough()
    {
        int probed = Readings.Count(n => n > 0);
        if (2 * probed < Readings.Length || probed < 3)
        {
            throw Guard.Refused("points", string.Create(
                CultureInfo.InvariantCulture,
                $"The points fill {probed} of the {Readings.Length} nodes of a grid of {X.Count} by {Y.Count}; at least half and at least 3 are needed. Scattered points form no grid."));
        }
    }

    /// <summary>About the first reading of each node, so that a large common height keeps its digits.</summary>
    private void AverageHeights(ProbePoint[] points, int[] nodeOf)
    {
        double[] first = new double[Heights.Length];
        int[] seen = new int[Heights.Length];
        for (int k = 0; k < points.Length; k++)
        {
            int i = nodeOf[k];
            first[i] = seen[i]++ == 0 ? points[k].ZMeters : first[i];
            Heights[i] += (points[k].ZMeters - first[i]) / Readings[i];
        }

        for (int i = 0; i < Heights.Length; i++)
        {
            Heights[i] += first[i];
        }
    }

    private void SetUncertainties(ProbePoint[] points, int[] nodeOf, PointNoise? noise)
    {
        int freedom = points.Length - Readings.Count(n => n > 0);
        double squares = 0, ratios = 0;
        for (int k = 0; k < points.Length; k++)
        {
            double deviation = points[k].ZMeters - Heights[nodeOf[k]];
            squares += deviation * deviation;
            ratios += noise is null ? 0 : deviation * deviation / (noise.StandardUncertainties[k] * noise.StandardUncertainties[k]);
        }

        if (freedom > 0)
        {
            Findings.Add(GridFindings.Repeated(Readings.Count(n => n > 1), Readings.Where(n => n > 1).Sum()));
        }

        if (noise is not null && freedom > 0 && PointNoise.ChanceOfMore(ratios, freedom, noise.DegreesOfFreedom) < RareChance)
        {
            Findings.Add(GridFindings.RepeatsDisagree(Math.Sqrt(ratios / freedom), freedom));
        }

        HasUncertainty = noise is not null || squares > 0;
        DegreesOfFreedom = noise?.DegreesOfFreedom ?? (squares > 0 ? freedom : double.PositiveInfinity);
        for (int k = 0; HasUncertainty && k < points.Length; k++)
        {
            double u = noise?.StandardUncertainties[k] ?? Math.Sqrt(squares / freedom);
            int i = nodeOf[k];
            StandardUncertainties[i] = double.Hypot(StandardUncertainties[i], u / Readings[i]);
        }
    }
}
