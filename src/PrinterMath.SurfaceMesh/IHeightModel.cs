using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A model of the surface: the height anywhere, from heights that were probed at the nodes of a grid. z is positive upwards.</summary>
/// <remarks>
/// Models are immutable and may be used from several threads. The uncertainty is that of the nodes, propagated; how far the true surface bends
/// away between the nodes is stated apart by <see cref="InterpolationErrorAt"/>.
/// </remarks>
/// <example><code>
/// IHeightModel model = BicubicModel.Through(grid);
/// Measured&lt;Length&gt; z = model.HeightAt(x, y);
/// model.Heights(xs, ys, zs);
/// </code></example>
public interface IHeightModel
{
    /// <summary>The rectangle the nodes span.</summary>
    SurfaceRectangle Domain { get; }

    /// <summary>What happens outside <see cref="Domain"/>.</summary>
    OutsideRule Outside { get; }

    /// <summary>What was noticed, see <see cref="SurfaceFindings"/>.</summary>
    IReadOnlyList<Finding> Findings { get; }

    /// <summary>Height z without its uncertainty.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <returns>The height.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The place is not finite, or outside a domain whose rule is <see cref="OutsideRule.Refuse"/>.</exception>
    Length EstimateAt(Length x, Length y);

    /// <summary>Height z with its standard uncertainty from the probe.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <returns>The height.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The place is not finite, or outside a domain whose rule is <see cref="OutsideRule.Refuse"/>.</exception>
    /// <exception cref="IndeterminateException">Nothing is known of the probe's repeatability.</exception>
    Measured<Length> HeightAt(Length x, Length y);

    /// <summary>Height z with its standard uncertainty, if the probe's repeatability is known.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <param name="height">The height, or the default.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The place is not finite, or outside a domain whose rule is <see cref="OutsideRule.Refuse"/>.</exception>
    bool TryGetHeight(Length x, Length y, out Measured<Length> height);

    /// <summary>Slope of the model.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <returns>The slope; zero along an axis on which the place is clamped.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The place is not finite, or outside a domain whose rule is <see cref="OutsideRule.Refuse"/>.</exception>
    SurfaceGradient GradientAt(Length x, Length y);

    /// <summary>How far the true surface may lie from the model because of what it does between the nodes; an estimate of a bound, not a standard deviation.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <returns>The estimate for the cell of that place, zero or more; noise of the nodes makes it larger. Outside the domain that of the nearest cell.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The place is not finite, or outside a domain whose rule is <see cref="OutsideRule.Refuse"/>.</exception>
    Length InterpolationErrorAt(Length x, Length y);

    /// <summary>Heights of many places, without allocation.</summary>
    /// <param name="xs">Positions along x in metres.</param>
    /// <param name="ys">Positions along y in metres, as many.</param>
    /// <param name="zs">Takes the heights in metres, as many.</param>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A place is not finite, or outside a domain whose rule is <see cref="OutsideRule.Refuse"/>; heights before it are written.</exception>
    void Heights(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs);
}
