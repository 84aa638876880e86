using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A surface taken apart into offset, tilts, bows and twist: what tramming can remove, what is warp, and what is left over. z is positive upwards.</summary>
/// <remarks>
/// <para>z = c₀ + c₁ξ + c₂η + c₃(3ξ² − 1)/2 + c₄ξη + c₅(3η² − 1)/2 fitted by least squares, ξ and η from −1 to 1 across the rectangle. Where uncertainties are known for all
/// points they weigh the fit and set its covariance; otherwise the scatter about the fit does. Fitted, not projected: on the points of a grid these terms are
/// not orthogonal.</para>
/// <para>Shares are of the mean square height over the rectangle, on which the terms are orthogonal: cᵢⱼ²/((2i + 1)(2j + 1)), and s² = Σe²/(n − 6) for what is left over.</para>
/// Source: Legendre polynomials, Abramowitz, Stegun 1964, 22.2.10 and 22.7.10 (from memory); F test of one coefficient, Draper, Smith 1998, Applied Regression Analysis,
/// 3rd ed., chapter 6 (from memory).
/// </remarks>
/// <example><code>
/// ShapeDecomposition shape = ShapeDecomposition.Fit(grid.Points, new ShapeOptions { Repeatability = Length.FromMicrometers(8) });
/// Measured&lt;Length&gt; twist = shape.Component(ShapeTerm.Twist).Amplitude;
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ShapeDecomposition
{
    private readonly ShapeFit? _fit;
    private readonly ReadOnlyCollection<Finding> _findings;

    private ShapeDecomposition(SurfaceRectangle rectangle, ShapeFit? fit, IEnumerable<Finding> findings)
    {
        Rectangle = rectangle;
        _fit = fit;
        _findings = Array.AsReadOnly(findings.ToArray());
    }

    /// <summary>The rectangle on which the terms are defined.</summary>
    public SurfaceRectangle Rectangle { get; }

    /// <summary>What was noticed, see <see cref="SurfaceFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>All six terms, in the order of <see cref="ShapeTerm"/>.</summary>
    /// <exception cref="IndeterminateException">The points cannot tell the terms apart.</exception>
    public IReadOnlyList<ShapeComponent> Components => Array.AsReadOnly(Fitted.Components);

    /// <summary>Amplitudes in metres, jointly, with their covariance.</summary>
    /// <exception cref="IndeterminateException">The points cannot tell the terms apart, or nothing is known of the uncertainty.</exception>
    public JointEstimate Amplitudes => Fitted.Joint ?? throw new IndeterminateException(GridFindings.UncertaintyUnknown);

    /// <summary>Share of both tilts in the mean square height about the offset, a ratio: what tramming removes.</summary>
    /// <exception cref="IndeterminateException">The points cannot tell the terms apart.</exception>
    public double TiltShare => Fitted.Components[(int)ShapeTerm.TiltX].Share + Fitted.Components[(int)ShapeTerm.TiltY].Share;

    /// <summary>Share of both bows and the twist, a ratio: warp that only a surface map removes.</summary>
    /// <exception cref="IndeterminateException">The points cannot tell the terms apart.</exception>
    public double WarpShare => Fitted.Components[(int)ShapeTerm.BowX].Share + Fitted.Components[(int)ShapeTerm.Twist].Share + Fitted.Components[(int)ShapeTerm.BowY].Share;

    /// <summary>Share of what the six terms leave over, a ratio: noise and shape of higher order; zero when there are no more than six points.</summary>
    /// <exception cref="IndeterminateException">The points cannot tell the terms apart.</exception>
    public double LeftOverShare => Fitted.LeftOverShare;

    /// <summary>Share the probe's noise explains, a ratio, at most <see cref="LeftOverShare"/>; null when the repeatability is unknown.</summary>
    /// <exception cref="IndeterminateException">The points cannot tell the terms apart.</exception>
    public double? NoiseShare => Fitted.NoiseShare;

    /// <summary>Standard deviation s of what the six terms leave over.</summary>
    /// <exception cref="IndeterminateException">The points cannot tell the terms apart, or are no more than six.</exception>
    public Length LeftOver =>
        Length.FromMeters(Fitted.LeftOver ?? throw new IndeterminateException("Six points determine six terms and leave nothing over."));

    /// <summary>Probability that probe noise alone leaves over at least as much (χ² or F test), a ratio; null when the repeatability is unknown or nothing is left over.</summary>
    /// <exception cref="IndeterminateException">The points cannot tell the terms apart.</exception>
    public double? LeftOverChanceProbability => Fitted.LeftOverChance;

    private ShapeFit Fitted => _fit ?? throw new IndeterminateException(_findings[0]);

    /// <summary>Takes a surface apart.</summary>
    /// <param name="points">Points at any places; six or more at three or more places along x and along y.</param>
    /// <param name="options">Rectangle and repeatability; null for the defaults.</param>
    /// <returns>The terms; when the points cannot tell them apart, a finding says so.</returns>
    /// <exception cref="ArgumentException">There are no points, or they span no rectangle.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static ShapeDecomposition Fit(IReadOnlyList<ProbePoint> points, ShapeOptions? options = null)
    {
        options ??= new ShapeOptions();
        Guard.StrictlyBetween(options.SignificanceLevel, 0, 1);
        ProbePoint[] copy = [.. Guard.NotNull(points)];
        SurfaceRectangle rectangle = options.Rectangle ?? PointBounds.Of(copy);
        PointNoise? noise = PointNoise.Of(copy, options.Repeatability, options.RepeatabilityDegreesOfFreedom);
        ShapeFit? fit = ShapeFit.To(copy, rectangle, noise, options.SignificanceLevel);
        return new ShapeDecomposition(rectangle, fit, fit?.Findings ?? [ShapeFindings.Undetermined(copy.Length)]);
    }

    /// <summary>One of the terms.</summary>
    /// <param name="term">Which.</param>
    /// <returns>The term.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the named terms.</exception>
    /// <exception cref="IndeterminateException">The points cannot tell the terms apart.</exception>
    public ShapeComponent Component(ShapeTerm term) =>
        Enum.IsDefined(term) ? Fitted.Components[(int)term] : throw Guard.Out(nameof(term), term, "one of the named terms");

    /// <summary>All six terms, if the points tell them apart.</summary>
    /// <param name="components">The terms; empty when there are none.</param>
    /// <returns>Whether there are any.</returns>
    public bool TryGetComponents(out IReadOnlyList<ShapeComponent> components)
    {
        components = _fit is null ? [] : Components;
        return _fit is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The terms, or the finding that stands in their place.</returns>
    public override string ToString() => _fit is null ? _findings[0].ToString() : string.Join("; ", _fit.Components.AsEnumerable());
}
