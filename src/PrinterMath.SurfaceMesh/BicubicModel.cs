namespace PrinterMath.SurfaceMesh;

/// <summary>Bicubic interpolation of a grid: smooth through all nodes, without creases, with slopes at the nodes by a <see cref="SlopeRule"/>.</summary>
/// <remarks>
/// <para>Along each axis a cubic with given slopes at the nodes (Hermite). Slopes from neighbours are those of the parabola through the node and its two neighbours, which
/// for even spacing is (zᵢ₊₁ − zᵢ₋₁)/2h, and at the border through the last three nodes, which continues the surface as a parabola: surfaces that
/// are parabolas along x and along y are reproduced. With two nodes an axis is straight under every rule.</para>
/// <para><see cref="HeightModel.InterpolationErrorAt"/>: along one axis |e| ≤ h³ max|z‴|/24 + h⁴ max|z⁗|/384 for slopes from neighbours, which are wrong by h²z‴/6, and
/// the error of the Hermite cubic; the third and fourth differences of the nodes about the cell stand for the derivatives. Other slopes m add h·|m − m_neighbours|/4, the
/// largest change they can make. Along two axes e ≤ eₓ + 1.25 e_y, since a cubic's weights add up to at most 1.25 in absolute value. In border cells
/// slopes are wrong by twice as much, and so is the first term. With fewer than four nodes along an axis there are no such differences and the bound of <see cref="BilinearModel"/>
/// stands in.</para>
/// <para>The uncertainty is propagated exactly where the slopes are linear in the heights (neighbours, natural spline), else by changing each node by the probe's
/// standard uncertainty, which takes up to a millisecond a place. Nodes that were not probed are bridged by the surface of least bending through the others, with a finding and an
/// increased uncertainty.</para>
/// Source: slopes from neighbours: Catmull, Rom 1974, A class of local interpolating splines; Keys 1981, Cubic convolution interpolation for digital image processing,
/// IEEE Transactions on Acoustics, Speech, and Signal Processing 29, with a = −½ and its boundary condition; for uneven spacing de Boor 1978, A Practical Guide to Splines,
/// chapter IV, cubic Bessel interpolation; natural spline: the same. Shape-preserving: Fritsch, Butland 1984, A method for constructing local monotone piecewise cubic interpolants, SIAM
/// Journal on Scientific and Statistical Computing 5, 300-304, along the grid lines; the limit within cells is derived here from the hull of Bézier ordinates. Akima 1970, A new method of interpolation and
/// smooth curve fitting based on local procedures, Journal of the ACM 17, 589-602; across lines the mean twist of parabolas (all from memory). Uncertainty by changes: JCGM 100:2008, 5.1.3
/// note 2.
/// </remarks>
/// <example><code>
/// BicubicModel model = BicubicModel.Through(grid, SlopeRule.ShapePreserving);
/// SurfaceGradient slope = model.GradientAt(Length.FromMillimeters(33), Length.FromMillimeters(71));
/// </code></example>
public sealed class BicubicModel : HeightModel, ICellwiseModel
{
    private readonly GridSource _source;

    private BicubicModel(GridSource source, SlopeRule slopes)
        : base(source)
    {
        _source = source;
        Slopes = slopes;
    }

    GridAxis ICellwiseModel.Columns => _source.Grid.X;

    GridAxis ICellwiseModel.Rows => _source.Grid.Y;

    int ICellwiseModel.LineDegree => 6;

    /// <summary>Where the slopes at the nodes come from.</summary>
    public SlopeRule Slopes { get; }

    /// <summary>A model through the nodes of a grid, with slopes from neighbouring nodes.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="options">What happens outside; null for the default.</param>
    /// <returns>The model.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the named rules.</exception>
    public static BicubicModel Through(ProbedGrid grid, HeightModelOptions? options = null) => Through(grid, SlopeRule.Neighbours, options);

    /// <summary>A model through the nodes of a grid.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="slopes">Where the slopes at the nodes come from.</param>
    /// <param name="options">What happens outside; null for the default.</param>
    /// <returns>The model.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the named rules.</exception>
    public static BicubicModel Through(ProbedGrid grid, SlopeRule slopes, HeightModelOptions? options = null) =>
        new(new BicubicSource(new GridHeights(grid), slopes, options), slopes);
}
