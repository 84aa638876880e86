using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A height from the polynomial of its cell, carried on along the border's slopes outside.</summary>
internal abstract class GridSource : HeightSource
{
    private protected GridSource(GridHeights grid, CellPolynomials cells, HeightModelOptions? options)
        : base(new SurfaceRectangle(grid.X.First, grid.Y.First, grid.X.Last, grid.Y.Last), options, grid.Findings)
    {
        Grid = grid;
        Cells = cells;
    }

    internal GridHeights Grid { get; }

    internal CellPolynomials Cells { get; }

    internal sealed override double Estimate(double x, double y) => At(Cells, x, y);

    internal sealed override SurfaceGradient Gradient(double x, double y)
    {
        double insideX = InsideX(x), insideY = InsideY(y);
        (_, double alongX, double alongY, double twist) = Cells.At(insideX, insideY);
        double beyondX = Beyond(x, insideX), beyondY = Beyond(y, insideY);
        return new SurfaceGradient(
            insideX != x && Outside == OutsideRule.Clamp ? 0 : alongX + (beyondY * twist),
            insideY != y && Outside == OutsideRule.Clamp ? 0 : alongY + (beyondX * twist));
    }

    internal sealed override bool TryMeasure(double x, double y, out Measured<Length> height)
    {
        double estimate = Estimate(x, y);
        height = Grid.HasUncertainty ? Measured<Length>.FromSi(estimate, Math.Sqrt(Variance(x, y)), Grid.DegreesOfFreedom) : default;
        return height.HasValue;
    }

    internal sealed override double InterpolationError(double x, double y) =>
        CellError(Grid.X.Locate(InsideX(x), out _), Grid.Y.Locate(InsideY(y), out _));

    private protected abstract double CellError(int column, int row);

    private protected abstract double Variance(double x, double y);

    private protected double At(CellPolynomials cells, double x, double y)
    {
        double insideX = InsideX(x), insideY = InsideY(y);
        (double height, double alongX, double alongY, double twist) = cells.At(insideX, insideY);
        double beyondX = Beyond(x, insideX), beyondY = Beyond(y, insideY);
        return height + (beyondX * alongX) + (beyondY * alongY) + (beyondX * beyondY * twist);
    }

    /// <summary>How far the slope is followed outside.</summary>
    private protected double Beyond(double value, double inside) => Outside == OutsideRule.ExtendLinearly ? value - inside : 0;

    /// <summary>For a height that is linear in its nodes, as a product of weights along both axes.</summary>
    private protected double Variance(AxisBasis x, AxisBasis y, double atX, double atY)
    {
        double insideX = InsideX(atX), insideY = InsideY(atY);
        int column = Grid.X.Locate(insideX, out double t), row = Grid.Y.Locate(insideY, out double s);
        double[] a = new double[x.Width], b = new double[y.Width], factors = new double[x.Width * y.Width];
        int[] nodes = new int[factors.Length];
        x.Weigh(column, t, Beyond(atX, insideX), a);
        y.Weigh(row, s, Beyond(atY, insideY), b);
        for (int k = 0; k < factors.Length; k++)
        {
            nodes[k] = Grid.Index(x.First(column) + (k % a.Length), y.First(row) + (k / a.Length));
            factors[k] = a[k % a.Length] * b[k / a.Length];
        }

        return Grid.Variance(nodes, factors);
    }
}
