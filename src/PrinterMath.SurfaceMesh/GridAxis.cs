using System.Globalization;

namespace PrinterMath.SurfaceMesh;

/// <summary>Ascending nodes along one axis, and the cell a coordinate falls into.</summary>
internal sealed class GridAxis
{
    private readonly double[] _nodes;
    private readonly double[] _inverseSteps;
    private readonly double _meanInverseStep;

    internal GridAxis(double[] nodes)
    {
        _nodes = nodes;
        _inverseSteps = new double[nodes.Length - 1];
        for (int i = 0; i < _inverseSteps.Length; i++)
        {
            _inverseSteps[i] = 1 / (nodes[i + 1] - nodes[i]);
        }

        _meanInverseStep = _inverseSteps.Length / (nodes[^1] - nodes[0]);
    }

    internal int Count => _nodes.Length;

    internal int Cells => _inverseSteps.Length;

    internal double First => _nodes[0];

    internal double Last => _nodes[^1];

    internal ReadOnlySpan<double> Nodes => _nodes;

    internal double Step(int cell) => _nodes[cell + 1] - _nodes[cell];

    internal bool Holds(double value) => value >= _nodes[0] && value <= _nodes[^1];

    /// <summary>The cell of a coordinate within the axis and the place in it, from 0 to 1; a node belongs to the cell above it.</summary>
    internal int Locate(double value, out double within)
    {
        double[] nodes = _nodes;
        int cell = Math.Min((int)((value - nodes[0]) * _meanInverseStep), _inverseSteps.Length - 1);
        while (value < nodes[cell])
        {
            cell--;
        }

        while (cell < _inverseSteps.Length - 1 && value >= nodes[cell + 1])
        {
            cell++;
        }

        within = (value - nodes[cell]) * _inverseSteps[cell];
        return cell;
    }

    /// <summary>Sorts coordinates into columns: a gap above the tolerance begins a new one; each node is the mean of its column.</summary>
    internal static double[] Cluster(ReadOnlySpan<double> coordinates, double tolerance, Span<int> memberOf, string axisName)
    {
        int[] order = new int[coordinates.Length];
        double[] sorted = coordinates.ToArray();
        for (int i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        Array.Sort(sorted, order);
        List<double> nodes = [];
        int begin = 0;
        for (int i = 1; i <= sorted.Length; i++)
        {
            if (i < sorted.Length && sorted[i] - sorted[i - 1] <= tolerance)
            {
                continue;
            }

            if (sorted[i - 1] - sorted[begin] > 2 * tolerance)
            {
                throw Guard.Refused("points", string.Create(
                    CultureInfo.InvariantCulture,
                    $"The points do not lie on a grid: their {axisName} runs from {sorted[begin] * 1e3:0.####} to {sorted[i - 1] * 1e3:0.####} mm in steps within the position tolerance of {tolerance * 1e3:0.####} mm."));
            }

            double shift = 0;
            for (int k = begin; k < i; k++)
            {
                shift += (sorted[k] - sorted[begin]) / (i - begin);
                memberOf[order[k]] = nodes.Count;
            }

            nodes.Add(sorted[begin] + shift);
            begin = i;
        }

        return [.. nodes];
    }
}
