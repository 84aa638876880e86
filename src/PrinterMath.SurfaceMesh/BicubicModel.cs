using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Bicubic interpolation of a grid: smooth through all nodes, without creases, with slopes from neighbouring nodes.</summary>
/// <remarks>
/// <para>Along each axis a cubic with given slopes at the nodes (Hermite); a slope is that of the parabola through the node and its two neighbours, which for even spacing is
/// (zᵢ₊₁ − zᵢ₋₁)/2h, and at the border through the last three nodes, which continues the surface as a parabola. With two nodes the axis is straight. Surfaces that
/// are parabolas along x and along y are reproduced. Between steep neighbours it may overshoot the nodes, by 7 % of the height of a single step.</para>
/// <para>Nodes that were not probed are bridged by the surface of least bending through the others, with a finding and an increased uncertainty.</para>
/// Source: Catmull, Rom 1974, A class of local interpolating splines; Keys 1981, Cubic convolution interpolation for digital image processing, IEEE Transactions on
/// Acoustics, Speech, and Signal Processing 29, with a = −½ and its boundary condition (from memory); for uneven spacing de Boor 1978, A Practical Guide to Splines,
/// chapter IV, cubic Bessel interpolation (from memory).
/// </remarks>
/// <example><code>
/// BicubicModel model = BicubicModel.Through(grid);
/// SurfaceGradient slope = model.GradientAt(Length.FromMillimeters(33), Length.FromMillimeters(71));
/// </code></example>
public sealed class BicubicModel : IHeightModel, ICellwiseModel
{
    private const int Terms = 16;
    private readonly TensorSurface _surface;
    private readonly double[] _coefficients;

    private BicubicModel(TensorSurface surface)
    {
        _surface = surface;
        _coefficients = CellPolynomials.Of(surface, 3);
    }

    /// <inheritdoc/>
    public SurfaceRectangle Domain => _surface.Domain;

    /// <inheritdoc/>
    public OutsideRule Outside => _surface.Outside;

    /// <inheritdoc/>
    public IReadOnlyList<Finding> Findings => _surface.Findings;

    GridAxis ICellwiseModel.Columns => _surface.X.Axis;

    GridAxis ICellwiseModel.Rows => _surface.Y.Axis;

    int ICellwiseModel.LineDegree => 6;

    /// <summary>A model through the nodes of a grid.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="options">What happens outside; null for the default.</param>
    /// <returns>The model.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the named rules.</exception>
    public static BicubicModel Through(ProbedGrid grid, HeightModelOptions? options = null) => new(new TensorSurface(grid, options, AxisBasis.Cubic));

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
    /// <remarks>
    /// Along one axis |e| ≤ h³ max|z‴|/24 + h⁴ max|z⁗|/384, from slopes that are wrong by h²z‴/6 and the error of the Hermite cubic; the third and fourth differences
    /// of the nodes about the cell stand for the derivatives. Along two axes e ≤ eₓ + 1.25 e_y, since a cubic's weights add up to at most 1.25 in absolute
    /// value. In border cells slopes are wrong by twice as much, and so is the first term. With fewer than four nodes along an axis there are no such differences and the bound of
    /// <see cref="BilinearModel"/> stands in.
    /// </remarks>
    public Length InterpolationErrorAt(Length x, Length y) => Length.FromMeters(InterpolationError.BicubicAt(_surface, x.Meters, y.Meters));

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
            nuint start = (nuint)(((row * columns.Cells) + column) * Terms);
            Vector256<double> alongY = Vector256.LoadUnsafe(ref coefficients, start + 12);
            alongY = (alongY * t) + Vector256.LoadUnsafe(ref coefficients, start + 8);
            alongY = (alongY * t) + Vector256.LoadUnsafe(ref coefficients, start + 4);
            alongY = (alongY * t) + Vector256.LoadUnsafe(ref coefficients, start);
            double squared = s * s;
            zs[k] = Vector256.Dot(alongY, Vector256.Create(1, s, squared, squared * s));
        }
    }
}
