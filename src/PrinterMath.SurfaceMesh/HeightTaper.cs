using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Fading the correction out with height, so that the top of a part ends flat: in full up to a height h₀, then in proportion to what is left up to h₁, and none above.</summary>
/// <remarks>
/// <para>A layer whose nominal height above the zero of the map is h is printed at Z = h + f(h) z, where z is the height of the surface there, positive upwards, and f = 1 up to h₀,
/// (h₁ − h)/(h₁ − h₀) between, 0 from h₁ on. Within the taper each layer is dZ/dh = 1 − z/(h₁ − h₀) times as thick as it should be: thinner over a rise, thicker over a dip. The
/// layers up to h₁ make up the whole of z, h₁ − z above the surface, so none of it is left at the top.</para>
/// <para>Limit: for layers to be no more than a share e off their thickness, h₁ − h₀ ≥ max|z|/e; for them to have any thickness at all, h₁ − h₀ > max z. Where the feed of
/// filament is not scaled by the same ratio, beads over a rise are overfilled by its inverse, z/(h₁ − h₀) to first order. A slope of the surface, m, is printed as f m.</para>
/// Source: derived from Z = h + f z; that corrections are faded out at all is common practice, no source.
/// </remarks>
/// <example><code>
/// HeightTaper taper = HeightTaper.ForThicknessError(Length.FromMillimeters(0.15), largestThicknessError: 0.02, start: Length.FromMillimeters(1));
/// Length z = taper.PrintedHeight(Length.FromMillimeters(3), surfaceHeight);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class HeightTaper
{
    private readonly double _start;
    private readonly double _end;

    private HeightTaper(double start, double end)
    {
        _start = start;
        _end = end;
    }

    /// <summary>h₀: up to this height the correction is full.</summary>
    public Length Start => Length.FromMeters(_start);

    /// <summary>h₁: from this height on there is no correction.</summary>
    public Length End => Length.FromMeters(_end);

    private double Span => _end - _start;

    /// <summary>A taper between two heights.</summary>
    /// <param name="start">h₀, zero or more: the first layer at least, so that it is corrected in full.</param>
    /// <param name="end">h₁, above <paramref name="start"/>.</param>
    /// <returns>The taper.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A height is not finite, or they are not in order.</exception>
    public static HeightTaper Between(Length start, Length end)
    {
        double from = Guard.NonNegative(start.Meters, nameof(start)), to = Guard.Finite(end.Meters, nameof(end));
        return to > from ? new HeightTaper(from, to) : throw Guard.Out(nameof(end), to, FormattableString.Invariant($"above start, {from} m"));
    }

    /// <summary>The shortest taper that keeps layers near their thickness: h₁ = h₀ + max|z|/e.</summary>
    /// <param name="largestSurfaceHeight">max|z|, greater than zero; add its expanded uncertainty.</param>
    /// <param name="largestThicknessError">e, the largest relative error of a layer's thickness, a ratio greater than 0 and less than 1.</param>
    /// <param name="start">h₀, zero or more.</param>
    /// <returns>The taper.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static HeightTaper ForThicknessError(Length largestSurfaceHeight, double largestThicknessError, Length start)
    {
        double from = Guard.NonNegative(start.Meters, nameof(start));
        double over = Guard.Positive(largestSurfaceHeight.Meters, nameof(largestSurfaceHeight)) / Guard.StrictlyBetween(largestThicknessError, 0, 1);
        return new HeightTaper(from, from + over);
    }

    /// <summary>f, the share of the correction that is applied at a height, a ratio from 1 to 0.</summary>
    /// <param name="height">Nominal height h above the zero of the map, zero or more.</param>
    /// <returns>The share.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is not finite, or negative.</exception>
    public double ShareAt(Length height) => Math.Clamp((_end - Guard.NonNegative(height.Meters, nameof(height))) / Span, 0, 1);

    /// <summary>Z = h + f(h) z: where the nozzle goes.</summary>
    /// <param name="height">Nominal height h above the zero of the map, zero or more.</param>
    /// <param name="surfaceHeight">Height z of the surface there, positive upwards, less than <see cref="End"/> − <see cref="Start"/>.</param>
    /// <returns>The height of the nozzle above the zero of the map.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range: over a rise as high as the taper is long, layers would have no thickness.</exception>
    public Length PrintedHeight(Length height, Length surfaceHeight) =>
        Length.FromMeters(height.Meters + (ShareAt(height) * Rise(surfaceHeight.Meters, nameof(surfaceHeight))));

    /// <summary>1 − z/(h₁ − h₀): how thick a layer within the taper is, as a share of what it should be.</summary>
    /// <param name="surfaceHeight">Height z of the surface there, less than <see cref="End"/> − <see cref="Start"/>.</param>
    /// <returns>The ratio; scale the feed of filament by it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is not finite, or too large for the taper.</exception>
    public double ThicknessRatio(Length surfaceHeight) => 1 - (Rise(surfaceHeight.Meters, nameof(surfaceHeight)) / Span);

    /// <summary>1 − z/(h₁ − h₀) with the uncertainty of z: u(z)/(h₁ − h₀). Judge it with a <see cref="Tolerance{T}"/> about 1.</summary>
    /// <param name="surfaceHeight">Height z of the surface there, less than <see cref="End"/> − <see cref="Start"/>.</param>
    /// <returns>The ratio.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is too large for the taper.</exception>
    public Measured<double> ThicknessRatio(Measured<Length> surfaceHeight) => Measured<double>.FromSi(
        1 - (Rise(surfaceHeight.SiValue, nameof(surfaceHeight)) / Span), surfaceHeight.SiStandardUncertainty / Span, surfaceHeight.DegreesOfFreedom);

    /// <summary>How much thicker than nominal a layer comes out, t − t₀, exact also where it straddles an end of the taper.</summary>
    /// <param name="bottom">Nominal height of the layer's bottom, zero or more.</param>
    /// <param name="thickness">Nominal thickness t₀, greater than zero.</param>
    /// <param name="surfaceHeight">Height z of the surface there, less than <see cref="End"/> − <see cref="Start"/>.</param>
    /// <returns>The difference: negative over a rise, positive over a dip, zero outside the taper.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public Length ThicknessError(Length bottom, Length thickness, Length surfaceHeight)
    {
        double below = ShareAt(bottom), above = ShareAt(bottom + Length.FromMeters(Guard.Positive(thickness.Meters, nameof(thickness))));
        return Length.FromMeters((above - below) * Rise(surfaceHeight.Meters, nameof(surfaceHeight)));
    }

    /// <summary>Splits a straight move at a height within the taper, where the correction and the deviation of its chords are smaller.</summary>
    /// <param name="model">The model, zero where the map is.</param>
    /// <param name="from">Where the move begins.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="height">Nominal height h of the layer, zero or more.</param>
    /// <param name="maximumDeviation">Largest distance of the corrected move from f z, along the Z axis; 1 nm or more.</param>
    /// <returns>Pieces with heights f z, as <see cref="HeightModelMoves.Follow"/> makes them; one level piece above the taper.</returns>
    /// <exception cref="ArgumentException">The move has no length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range, see <see cref="HeightModelMoves.Follow"/>.</exception>
    public FollowedMove Follow(IHeightModel model, SurfacePosition from, SurfacePosition to, Length height, Length maximumDeviation) =>
        HeightModelMoves.FollowShare(Guard.NotNull(model), from, to, maximumDeviation, ShareAt(height));

    /// <summary>Invariant text.</summary>
    /// <returns>Both heights.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"full correction up to {_start * 1e3:0.###} mm, none from {_end * 1e3:0.###} mm on");

    private double Rise(double surfaceHeight, string name) =>
        Guard.Finite(surfaceHeight, name) < Span
            ? surfaceHeight
            : throw Guard.Out(name, surfaceHeight, FormattableString.Invariant($"less than the length of the taper, {Span} m, or layers would have no thickness"));
}
