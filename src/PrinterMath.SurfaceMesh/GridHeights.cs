using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh;

/// <summary>Heights of all nodes of a grid, bridged where needed, and the variance of any combination of them.</summary>
internal sealed class GridHeights
{
    private readonly GridNodes _nodes;
    private readonly GridBridge? _bridge;

    internal GridHeights(ProbedGrid grid)
    {
        _nodes = Guard.NotNull(grid).Nodes;
        _bridge = grid.IsComplete ? null : GridBridge.Across(_nodes);
        Findings = _bridge is null ? grid.Findings : [.. grid.Findings, GridFindings.Bridged(_bridge.Count, _bridge.LargestError)];
        double squares = _nodes.StandardUncertainties.Sum(u => u * u);
        Typical = Math.Sqrt(squares / Math.Max(1, _nodes.StandardUncertainties.Count(u => u > 0)));
    }

    internal GridAxis X => _nodes.X;

    internal GridAxis Y => _nodes.Y;

    internal double[] Values => _bridge?.Heights ?? _nodes.Heights;

    internal bool HasUncertainty => _nodes.HasUncertainty;

    internal double DegreesOfFreedom => _nodes.DegreesOfFreedom;

    /// <summary>Root mean square of the standard uncertainties of the probed nodes.</summary>
    internal double Typical { get; }

    internal IReadOnlyList<Finding> Findings { get; }

    internal int Index(int column, int row) => _nodes.Index(column, row);

    /// <summary>Variance of Σ factor·height. Probed nodes are independent; how far bridges are off is taken as common to all of them.</summary>
    internal double Variance(ReadOnlySpan<int> nodes, ReadOnlySpan<double> factors)
    {
        double[] toProbed = _bridge is null ? [] : new double[_bridge.Probed.Length];
        double variance = 0, bridges = 0;
        for (int i = 0; i < nodes.Length; i++)
        {
            double own = factors[i] * _nodes.StandardUncertainties[nodes[i]];
            variance += _bridge is null ? own * own : 0;
            bridges += factors[i] == 0 ? 0 : Math.Abs(_bridge?.Add(nodes[i], factors[i], toProbed) ?? 0);
        }

        for (int k = 0; k < toProbed.Length; k++)
        {
            double own = toProbed[k] * _nodes.StandardUncertainties[_bridge!.Probed[k]];
            variance += own * own;
        }

        return variance + (bridges * bridges);
    }
}
