using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A height as a product of two interpolations: z(x, y) = Σᵢ Σⱼ aᵢ(x) bⱼ(y) zᵢⱼ, linear in the node heights, so their uncertainty propagates exactly.</summary>
internal sealed class TensorSurface
{
    private readonly GridNodes _nodes;
    private readonly GridBridge? _bridge;
    private readonly OutsideRule _outside;

    internal TensorSurface(ProbedGrid grid, HeightModelOptions? options, Func<GridAxis, AxisBasis> basis)
    {
        _nodes = Guard.NotNull(grid).Nodes;
        _outside = options?.Outside ?? OutsideRule.Refuse;
        if (!Enum.IsDefined(_outside))
        {
            throw Guard.Out(nameof(options), _outside, "one of the named rules");
        }

        _bridge = grid.IsComplete ? null : GridBridge.Across(_nodes);
        X = basis(_nodes.X);
        Y = basis(_nodes.Y);
        Findings = Array.AsReadOnly<Finding>(_bridge is null ? [.. grid.Findings] : [.. grid.Findings, GridFindings.Bridged(_bridge.Count, _bridge.LargestError)]);
    }

    internal AxisBasis X { get; }

    internal AxisBasis Y { get; }

    internal OutsideRule Outside => _outside;

    internal IReadOnlyList<Finding> Findings { get; }

    internal double[] Heights => _bridge?.Heights ?? _nodes.Heights;

    internal SurfaceRectangle Domain => new(X.Axis.First, Y.Axis.First, X.Axis.Last, Y.Axis.Last);

    /// <summary>Cell of a place whose coordinate may lie outside, where the rule allows that.</summary>
    internal int CellOf(AxisBasis basis, double value, string name) => basis.Axis.Locate(Inside(basis.Axis, value, name), out _);

    internal double Estimate(double x, double y)
    {
        Span<double> a = stackalloc double[AxisBasis.Width], b = stackalloc double[AxisBasis.Width];
        Span<double> slope = stackalloc double[AxisBasis.Width];
        int column = Weigh(X, x, nameof(x), a, slope);
        int row = Weigh(Y, y, nameof(y), b, slope);
        return Sum(column, row, a, b);
    }

    internal SurfaceGradient Gradient(double x, double y)
    {
        Span<double> a = stackalloc double[AxisBasis.Width], b = stackalloc double[AxisBasis.Width];
        Span<double> slopeA = stackalloc double[AxisBasis.Width], slopeB = stackalloc double[AxisBasis.Width];
        int column = Weigh(X, x, nameof(x), a, slopeA);
        int row = Weigh(Y, y, nameof(y), b, slopeB);
        return new SurfaceGradient(Sum(column, row, slopeA, b), Sum(column, row, a, slopeB));
    }

    internal bool TryMeasure(double x, double y, out Measured<Length> height)
    {
        Span<double> a = stackalloc double[AxisBasis.Width], b = stackalloc double[AxisBasis.Width];
        Span<double> slope = stackalloc double[AxisBasis.Width];
        int column = Weigh(X, x, nameof(x), a, slope);
        int row = Weigh(Y, y, nameof(y), b, slope);
        height = _nodes.HasUncertainty
            ? Measured<Length>.FromSi(Sum(column, row, a, b), Math.Sqrt(Variance(column, row, a, b)), _nodes.DegreesOfFreedom)
            : default;
        return height.HasValue;
    }

    private double Sum(int column, int row, ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double[] heights = Heights;
        double sum = 0;
        for (int j = 0; j < AxisBasis.Width; j++)
        {
            for (int i = 0; b[j] != 0 && i < AxisBasis.Width; i++)
            {
                sum += a[i] == 0 ? 0 : a[i] * b[j] * heights[_nodes.Index(column + i, row + j)];
            }
        }

        return sum;
    }

    /// <summary>Probed nodes are independent; how far bridges are off is taken as common to all of them.</summary>
    private double Variance(int column, int row, ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double[] toProbed = _bridge is null ? [] : new double[_bridge.Probed.Length];
        double variance = 0, bridges = 0;
        for (int j = 0; j < AxisBasis.Width; j++)
        {
            for (int i = 0; i < AxisBasis.Width; i++)
            {
                double factor = a[i] * b[j];
                if (factor == 0)
                {
                    continue;
                }

                int node = _nodes.Index(column + i, row + j);
                double own = factor * _nodes.StandardUncertainties[node];
                variance += _bridge is null ? own * own : 0;
                bridges += Math.Abs(_bridge?.Add(node, factor, toProbed) ?? 0);
            }
        }

        for (int k = 0; k < toProbed.Length; k++)
        {
            double own = toProbed[k] * _nodes.StandardUncertainties[_bridge!.Probed[k]];
            variance += own * own;
        }

        return variance + (bridges * bridges);
    }

    private int Weigh(AxisBasis basis, double value, string name, Span<double> height, Span<double> slope)
    {
        double inside = Inside(basis.Axis, value, name);
        int cell = basis.Axis.Locate(inside, out double t);
        basis.Weigh(cell, t, height, slope);
        if (inside != value && _outside == OutsideRule.Clamp)
        {
            slope.Clear();
        }

        for (int j = 0; j < AxisBasis.Width; j++)
        {
            height[j] += (value - inside) * slope[j];
        }

        return basis.First(cell);
    }

    private double Inside(GridAxis axis, double value, string name) =>
        axis.Holds(value) ? value
        : !double.IsFinite(value) ? throw Guard.Out(name, value, "a finite number of metres")
        : _outside == OutsideRule.Refuse ? throw Guard.Out(name, value, FormattableString.Invariant($"within the domain, {axis.First} to {axis.Last} m"))
        : Math.Clamp(value, axis.First, axis.Last);
}
