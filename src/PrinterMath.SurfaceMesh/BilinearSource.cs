namespace PrinterMath.SurfaceMesh;

/// <summary>Bilinear interpolation of a grid.</summary>
internal sealed class BilinearSource : GridSource
{
    private readonly AxisBasis _x;
    private readonly AxisBasis _y;

    internal BilinearSource(GridHeights grid, HeightModelOptions? options)
        : base(grid, CellPolynomials.Bilinear(grid.X, grid.Y, grid.Values), options)
    {
        _x = AxisBasis.Linear(grid.X);
        _y = AxisBasis.Linear(grid.Y);
    }

    internal override void Heights(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs) => CellEvaluation.Bilinear(Cells, this, xs, ys, zs);

    private protected override double CellError(int column, int row) => SurfaceMesh.InterpolationError.BilinearAt(Grid, column, row);

    private protected override double Variance(double x, double y) => Variance(_x, _y, x, y);
}
