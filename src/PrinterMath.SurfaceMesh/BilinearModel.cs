using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Bilinear interpolation of a grid: straight along x and along y between the nodes, with creases at the borders of the cells.</summary>
/// <remarks>
/// z = z₀₀(1 − t)(1 − s) + z₁₀ t(1 − s) + z₀₁(1 − t)s + z₁₁ ts in the cell, t and s from 0 to 1. It never leaves the range of its four nodes.
/// Nodes that were not probed are bridged by the surface of least bending through the others, with a finding and an increased uncertainty.
/// At a crease the slope is that of the cell with the larger coordinate.
/// Source: error bound by splitting the operator, de Boor 1978, A Practical Guide to Splines, chapters III and XVII (from memory).
/// </remarks>
/// <example><code>
/// BilinearModel model = BilinearModel.Through(grid, new HeightModelOptions { Outside = OutsideRule.Clamp });
/// Measured&lt;Length&gt; z = model.HeightAt(Length.FromMillimeters(33), Length.FromMillimeters(71));
/// </code></example>
public sealed class BilinearModel : IHeightModel, ICellwiseModel
{
    private const int Terms = 4;
    private readonly TensorSurface _surface;
    private readonly double[] _coefficients;

    private BilinearModel(TensorSurface surface)
    {
        _surface = surface;
        _coefficients = CellPolynomials.Of(surface, 1);
    }

    /// <inheritdoc/>
    public SurfaceRectangle Domain => _surface.Domain;

    /// <inheritdoc/>
    public OutsideRule Outside => _surface.Outside;

    /// <inheritdoc/>
    public IReadOnlyList<Finding> Findings => _surface.Findings;

    GridAxis ICellwiseModel.Columns => _surface.X.Axis;

    GridAxis ICellwiseModel.Rows => _surface.Y.Axis;

    int ICellwiseModel.LineDegree => 2;

    /// <summary>A model through the nodes of a grid.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="options">What happens outside; null for the default.</param>
    /// <returns>The model.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the named rules.</exception>
    public static BilinearModel Through(ProbedGrid grid, HeightModelOptions? options = null) => new(new TensorSurface(grid, options, AxisBasis.Linear));

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

    /// <inheritdoc/>
    public Length EstimateAt(Length x, Length y) => Length.FromMeters(_surface.Estimate(x.Meters, y.Meters));

    /// <inheritdoc/>
    public Measured<Length> HeightAt(Length x, Length y) =>
        TryGetHeight(x, y, out Measured<Length> height) ? height : throw new IndeterminateException(GridFindings.UncertaintyUnknown);

    /// <inheritdoc/>
    public bool TryGetHeight(Length x, Length y, out Measured<Length> height) => _surface.TryMeasure(x.Meters, y.Meters, out height);

    /// <inheritdoc/>
    public SurfaceGradient GradientAt(Length x, Length y) => _surface.Gradient(x.Meters, y.Meters);

    /// <inheritdoc/>
    /// <remarks><see cref="ErrorBound"/> with the largest second differences of the nodes about the cell in place of the curvatures.</remarks>
    public Length InterpolationErrorAt(Length x, Length y) => Length.FromMeters(InterpolationError.BilinearAt(_surface, x.Meters, y.Meters));

    /// <inheritdoc/>
    public void Heights(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs)
    {
        CellPolynomials.RequireSameLength(xs.Length, ys.Length, zs.Length);
        GridAxis columns = _surface.X.Axis, rows = _surface.Y.Axis;
        ref double coefficients = ref MemoryMarshal.GetArrayDataReference(_coefficients);
        for (int k = 0; k < xs.Length && k < ys.Length && k < zs.Length; k++)
        {
            double x = xs[k], y = ys[k];
            if (!(columns.Holds(x) && rows.Holds(y)))
            {
                zs[k] = _surface.Estimate(x, y);
                continue;
            }

            int column = columns.Locate(x, out double t);
            int row = rows.Locate(y, out double s);
            ref double c = ref Unsafe.Add(ref coefficients, ((row * columns.Cells) + column) * Terms);
            zs[k] = c + (s * Unsafe.Add(ref c, 1)) + (t * (Unsafe.Add(ref c, 2) + (s * Unsafe.Add(ref c, 3))));
        }
    }
}
