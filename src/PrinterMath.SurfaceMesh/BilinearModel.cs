using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Bilinear interpolation of a grid: straight along x and along y between the nodes, with creases at the borders of the cells.</summary>
/// <remarks>
/// z = z₀₀(1 − t)(1 − s) + z₁₀ t(1 − s) + z₀₁(1 − t)s + z₁₁ ts in the cell, t and s from 0 to 1. It never leaves the range of its four nodes.
/// Nodes that were not probed are bridged by the surface of least bending through the others, with a finding and an increased uncertainty.
/// <see cref="HeightModel.InterpolationErrorAt"/> is <see cref="ErrorBound"/> with the largest second differences of the nodes about the cell in place of the curvatures.
/// At a crease the slope is that of the cell with the larger coordinate.
/// Source: error bound by splitting the operator, de Boor 1978, A Practical Guide to Splines, chapters III and XVII (from memory).
/// </remarks>
/// <example><code>
/// BilinearModel model = BilinearModel.Through(grid, new HeightModelOptions { Outside = OutsideRule.Clamp });
/// Measured&lt;Length&gt; z = model.HeightAt(Length.FromMillimeters(33), Length.FromMillimeters(71));
/// </code></example>
public sealed class BilinearModel : HeightModel, ICellwiseModel
{
    private readonly GridSource _source;

    private BilinearModel(GridSource source)
        : base(source) => _source = source;

    GridAxis ICellwiseModel.Columns => _source.Grid.X;

    GridAxis ICellwiseModel.Rows => _source.Grid.Y;

    int ICellwiseModel.LineDegree => 2;

    /// <summary>A model through the nodes of a grid.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="options">What happens outside; null for the default.</param>
    /// <returns>The model.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the named rules.</exception>
    public static BilinearModel Through(ProbedGrid grid, HeightModelOptions? options = null) => new(new BilinearSource(new GridHeights(grid), options));

    /// <summary>Largest distance of a surface from its bilinear interpolant: (hₓ² max|z_xx| + h_y² max|z_yy|)/8.</summary>
    /// <param name="spacingX">Spacing hₓ of the columns, greater than zero.</param>
    /// <param name="spacingY">Spacing h_y of the rows, greater than zero.</param>
    /// <param name="curvatureX">Largest |z_xx|, zero or more.</param>
    /// <param name="curvatureY">Largest |z_yy|, zero or more.</param>
    /// <returns>The bound.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or out of range.</exception>
    public static Length ErrorBound(Length spacingX, Length spacingY, ReciprocalLength curvatureX, ReciprocalLength curvatureY) => Length.FromMeters(
        InterpolationError.Bilinear(
            Guard.Positive(spacingX.Meters, nameof(spacingX)),
            Guard.Positive(spacingY.Meters, nameof(spacingY)),
            Guard.NonNegative(curvatureX.InverseMeters, nameof(curvatureX)),
            Guard.NonNegative(curvatureY.InverseMeters, nameof(curvatureY))));
}
