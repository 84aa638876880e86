using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>How heights of two places of a surface go along with each other, by their distance r: σ²·ρ(r/ℓ).</summary>
/// <remarks>Source: M. L. Stein 1999, Interpolation of Spatial Data, section 2.7; E. H. Isaaks, R. M. Srivastava 1989, An Introduction to Applied Geostatistics, chapter 12 (both from memory).</remarks>
/// <example><code>SurfaceCovariance smooth = SurfaceCovariance.Smooth(Length.FromMicrometers(40), Length.FromMillimeters(80));</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class SurfaceCovariance
{
    private SurfaceCovariance(CovarianceShape shape, Length standardDeviation, Length length)
    {
        Shape = shape;
        Sill = Math.Pow(Guard.Positive(standardDeviation.Meters, nameof(standardDeviation)), 2);
        LengthMeters = Guard.Positive(length.Meters, nameof(length));
    }

    /// <summary>Standard deviation σ of the heights about the trend.</summary>
    public Length StandardDeviation => Length.FromMeters(Math.Sqrt(Sill));

    /// <summary>Length ℓ.</summary>
    public Length CorrelationLength => Length.FromMeters(LengthMeters);

    internal CovarianceShape Shape { get; }

    internal double Sill { get; }

    internal double LengthMeters { get; }

    /// <summary>Exponential, σ²·e^(−r/ℓ): a rough surface with creases everywhere. Its "practical range" is 3ℓ.</summary>
    /// <param name="standardDeviation">σ, greater than zero.</param>
    /// <param name="length">ℓ, greater than zero.</param>
    /// <returns>The covariance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or not positive.</exception>
    public static SurfaceCovariance Exponential(Length standardDeviation, Length length) => new(CovarianceShape.Exponential, standardDeviation, length);

    /// <summary>Matérn's with ν = 5/2, σ²·(1 + a + a²/3)·e^(−a), a = √5·r/ℓ: a surface with slopes and curvatures, as plates are.</summary>
    /// <param name="standardDeviation">σ, greater than zero.</param>
    /// <param name="length">ℓ, greater than zero.</param>
    /// <returns>The covariance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or not positive.</exception>
    public static SurfaceCovariance Smooth(Length standardDeviation, Length length) => new(CovarianceShape.Smooth, standardDeviation, length);

    /// <summary>Invariant text.</summary>
    /// <returns>Shape, standard deviation and length.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{(Shape == CovarianceShape.Smooth ? "Matérn 5/2" : "exponential")}, σ = {Math.Sqrt(Sill) * 1e3:G4} mm, ℓ = {LengthMeters * 1e3:G4} mm");
}
