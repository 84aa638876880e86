using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>One term of a surface's shape: its amplitude, its share, and whether chance could have made it.</summary>
/// <remarks>Not to be confused with a slope: the amplitude of a tilt is its height at the border, half of its rise across the rectangle.</remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ShapeComponent
{
    private readonly double _estimate;
    private readonly Measured<Length> _amplitude;
    private readonly double _peakToValley;

    internal ShapeComponent(ShapeTerm term, double estimate, Measured<Length> amplitude, double peakToValley, double share, double? chance, double level)
    {
        Term = term;
        _estimate = estimate;
        _amplitude = amplitude;
        _peakToValley = peakToValley;
        Share = share;
        ChanceProbability = chance;
        IsSignificant = chance <= level;
    }

    /// <summary>Which term.</summary>
    public ShapeTerm Term { get; }

    /// <summary>Amplitude c without its uncertainty; its sign is that of <see cref="ShapeTerm"/>.</summary>
    public Length Estimate => Length.FromMeters(_estimate);

    /// <summary>Amplitude c with its standard uncertainty.</summary>
    /// <exception cref="IndeterminateException">The probe's repeatability is unknown and the points leave no scatter to judge it by.</exception>
    public Measured<Length> Amplitude => _amplitude.HasValue ? _amplitude : throw new IndeterminateException(GridFindings.UncertaintyUnknown);

    /// <summary>Peak-to-valley height of this term over the rectangle, zero or more.</summary>
    public Length PeakToValley => Length.FromMeters(_peakToValley);

    /// <summary>
    /// Share of this term in the mean square height about the offset, a ratio from 0 to 1; zero for the offset itself. A term of pure noise has a share as well: see
    /// <see cref="IsSignificant"/>.
    /// </summary>
    public double Share { get; }

    /// <summary>Probability that chance alone gives a term at least as large (F test with one degree of freedom), a ratio; null when the uncertainty is unknown.</summary>
    public double? ChanceProbability { get; }

    /// <summary>Whether that probability is at most the significance level; false when it is unknown.</summary>
    public bool IsSignificant { get; }

    /// <summary>Amplitude c with its standard uncertainty, if that is known.</summary>
    /// <param name="amplitude">The amplitude, or the default.</param>
    /// <returns>Whether it is known.</returns>
    public bool TryGetAmplitude(out Measured<Length> amplitude)
    {
        amplitude = _amplitude;
        return _amplitude.HasValue;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Term, amplitude and share.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Term} {(_amplitude.HasValue ? _amplitude.ToString() : $"{_estimate * 1e3:G4} mm")}, {Share * 100:0.#} %");
}
