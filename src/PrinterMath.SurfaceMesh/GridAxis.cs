using System.Globalization;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PrinterMath.SurfaceMesh;

/// <summary>Ascending nodes along one axis, and the cell a coordinate falls into.</summary>
internal sealed class GridAxis
{
    /// <summary>A few units in the last place of the coordinates: an axis this even has the same cells, to rounding, as one with its mean spacing.</summary>
    private const double Rounding = 1e-15;

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

        First = nodes[0];
        Last = nodes[^1];
        _meanInverseStep = _inverseSteps.Length / (Last - First);
        IsEven = true;
        for (int i = 0; i < nodes.Length; i++)
        {
            double even = First + (i / _meanInverseStep);
            IsEven &= Math.Abs(nodes[i] - even) <= Rounding * Math.Max(Math.Abs(First), Math.Abs(Last));
        }
    }

    internal int Count => _nodes.Length;

    internal int Cells => _inverseSteps.Length;

    internal double First { get; }

    internal double Last { get; }

    /// <summary>Whether all spacings are the same to rounding.</summary>
    internal bool IsEven { get; }

    internal EvenAxis Even() => new(First, Last, _meanInverseStep, Cells);

    internal ReadOnlySpan<double> Nodes => _nodes;

    internal double Step(int cell) => _nodes[cell + 1] - _nodes[cell];

    /// <summary>The nodes up to a reach to either side of a cell, as an axis of its own.</summary>
    internal GridAxis Around(int cell, int reach, out int first)
    {
        first = Math.Max(0, cell - reach);
        return new GridAxis(_nodes[first..Math.Min(Count, cell + reach + 2)]);
    }

    internal bool Holds(double value) => value >= First && value <= Last;

    /// <summary>
    /// The cell of a coordinate that the axis holds and the place in it, from 0 to 1; a node belongs to the cell above it. Inlined and without bounds checks,
    /// since it decides the speed of a whole map: the guess from the mean spacing is at most the last cell.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal int Locate(double value, out double within)
    {
        ref double nodes = ref MemoryMarshal.GetArrayDataReference(_nodes);
        int cell = Math.Min((int)((value - First) * _meanInverseStep), _inverseSteps.Length - 1);
        if (value < Unsafe.Add(ref nodes, cell) || value >= Unsafe.Add(ref nodes, cell + 1))
        {
            cell = Search(value, cell);
        }

        within = (value - Unsafe.Add(ref nodes, cell)) * Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_inverseSteps), cell);
        return cell;
    }

    private int Search(double value, int cell)
    {
        while (value < _nodes[cell])
        {
            cell--;
        }

        while (cell < _inverseSteps.Length - 1 && value >= _nodes[cell + 1])
        {
            cell++;
        }

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
