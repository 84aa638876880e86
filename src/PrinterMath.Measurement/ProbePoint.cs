using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Measurement;

/// <summary>A height measured at a place of the print surface: x and y exact, z with its standard uncertainty where one is known.</summary>
/// <remarks>
/// z is positive upwards, away from the surface. Equality by value, in metres; the default is the origin with unknown uncertainty.
/// </remarks>
/// <example><code>ProbePoint p = ProbePoint.At(Length.FromMillimeters(20), Length.FromMillimeters(30), Length.FromMillimeters(0.05));</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public readonly struct ProbePoint : IEquatable<ProbePoint>
{
    private readonly double _standardUncertainty;

    private ProbePoint(double x, double y, double z, double standardUncertainty)
    {
        XMeters = x;
        YMeters = y;
        ZMeters = z;
        _standardUncertainty = standardUncertainty;
    }

    /// <summary>Position along x.</summary>
    public Length X => Length.FromMeters(XMeters);

    /// <summary>Position along y.</summary>
    public Length Y => Length.FromMeters(YMeters);

    /// <summary>Height, positive upwards.</summary>
    public Length Z => Length.FromMeters(ZMeters);

    /// <summary>Position along x in metres, for computation.</summary>
    public double XMeters { get; }

    /// <summary>Position along y in metres, for computation.</summary>
    public double YMeters { get; }

    /// <summary>Height in metres, for computation.</summary>
    public double ZMeters { get; }

    /// <summary>Whether the height carries a standard uncertainty of its own.</summary>
    public bool HasUncertainty => _standardUncertainty > 0;

    /// <summary>Standard uncertainty of the height in metres; zero when none is known, see <see cref="HasUncertainty"/>.</summary>
    public double StandardUncertaintyMeters => _standardUncertainty;

    /// <summary>A point whose height uncertainty is not known and will be judged from the residuals.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <param name="z">Height, positive upwards.</param>
    /// <returns>The point.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is not finite.</exception>
    public static ProbePoint At(Length x, Length y, Length z) => FromMeters(x.Meters, y.Meters, z.Meters);

    /// <summary>A point with a measured height.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <param name="z">Height, positive upwards, with a standard uncertainty greater than zero.</param>
    /// <returns>The point.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is not finite or the uncertainty is zero.</exception>
    public static ProbePoint At(Length x, Length y, Measured<Length> z) =>
        FromMeters(x.Meters, y.Meters, z.SiValue, Guard.Positive(z.SiStandardUncertainty, nameof(z)));

    /// <summary>A point from numbers in metres.</summary>
    /// <param name="x">Position along x in metres.</param>
    /// <param name="y">Position along y in metres.</param>
    /// <param name="z">Height in metres, positive upwards.</param>
    /// <param name="standardUncertainty">Standard uncertainty of z in metres; zero when not known.</param>
    /// <returns>The point.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or the uncertainty is negative.</exception>
    public static ProbePoint FromMeters(double x, double y, double z, double standardUncertainty = 0) =>
        new(Guard.Finite(x), Guard.Finite(y), Guard.Finite(z), Guard.NonNegative(standardUncertainty));

    /// <inheritdoc/>
    public bool Equals(ProbePoint other) =>
        XMeters.Equals(other.XMeters)
        && YMeters.Equals(other.YMeters)
        && ZMeters.Equals(other.ZMeters)
        && _standardUncertainty.Equals(other._standardUncertainty);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is ProbePoint other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(XMeters, YMeters, ZMeters, _standardUncertainty);

    /// <summary>Invariant text in millimetres.</summary>
    /// <returns>The text.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"({XMeters * 1e3:0.###}, {YMeters * 1e3:0.###}, {ZMeters * 1e3:0.####}) mm");

    /// <summary>Equality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether both are the same point.</returns>
    public static bool operator ==(ProbePoint left, ProbePoint right) => left.Equals(right);

    /// <summary>Inequality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether they differ.</returns>
    public static bool operator !=(ProbePoint left, ProbePoint right) => !left.Equals(right);
}
