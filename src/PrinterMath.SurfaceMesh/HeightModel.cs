using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>What all height models of this package share: heights, slopes and uncertainties as quantities. z is positive upwards.</summary>
/// <remarks>Immutable, may be used from several threads. The models are <see cref="BilinearModel"/>, <see cref="BicubicModel"/> and the others of this package.</remarks>
/// <example><code>
/// HeightModel model = BicubicModel.Through(grid);
/// Measured&lt;Length&gt; z = model.HeightAt(x, y);
/// model.Heights(xs, ys, zs);
/// </code></example>
public abstract class HeightModel : IHeightModel
{
    private readonly HeightSource _source;

    private protected HeightModel(HeightSource source) => _source = source;

    /// <inheritdoc/>
    public SurfaceRectangle Domain => _source.Domain;

    /// <inheritdoc/>
    public OutsideRule Outside => _source.Outside;

    /// <inheritdoc/>
    public IReadOnlyList<Finding> Findings => _source.Findings;

    /// <inheritdoc/>
    public Length EstimateAt(Length x, Length y) => Length.FromMeters(_source.Estimate(x.Meters, y.Meters));

    /// <inheritdoc/>
    public Measured<Length> HeightAt(Length x, Length y) =>
        TryGetHeight(x, y, out Measured<Length> height) ? height : throw new IndeterminateException(GridFindings.UncertaintyUnknown);

    /// <inheritdoc/>
    public bool TryGetHeight(Length x, Length y, out Measured<Length> height) => _source.TryMeasure(x.Meters, y.Meters, out height);

    /// <inheritdoc/>
    public SurfaceGradient GradientAt(Length x, Length y) => _source.Gradient(x.Meters, y.Meters);

    /// <inheritdoc/>
    public Length InterpolationErrorAt(Length x, Length y) => Length.FromMeters(_source.InterpolationError(x.Meters, y.Meters));

    /// <inheritdoc/>
    public void Heights(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs)
    {
        if (xs.Length != ys.Length || xs.Length != zs.Length)
        {
            throw new ArgumentException(FormattableString.Invariant($"xs, ys and zs must be of one length; they have {xs.Length}, {ys.Length} and {zs.Length} entries."), nameof(zs));
        }

        _source.Heights(xs, ys, zs);
    }
}
