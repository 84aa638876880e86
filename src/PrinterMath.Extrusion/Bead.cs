using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>Cross-section of a printed bead: a rectangle with two half-round sides, width w over all and height h, with w ≥ h &gt; 0.</summary>
/// <remarks>
/// <para>A = (w − h)·h + π·h²/4. The area is what is conserved, the shape is a model: measured sections run from nearly round to flat with rounded ends and differ
/// from it (Comminal, Serdeczny, Pedersen, Spangenberg 2018, Additive Manufacturing 20, 68 to 76, abstract). Source of the formula: plane geometry.</para>
/// <para>Equality by value. The default is no bead: every number of it throws <see cref="InvalidOperationException"/>. Nothing here allocates.</para>
/// </remarks>
/// <example><code>
/// Bead bead = Bead.FromWidthAndHeight(Length.FromMillimeters(0.45), Length.FromMillimeters(0.2));
/// Speed feed = bead.FeedSpeedAt(Speed.FromMillimetersPerSecond(60), filamentDiameter: Length.FromMillimeters(1.75));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public readonly struct Bead : IEquatable<Bead>
{
    /// <summary>1 − π/4: the part of a square that its inscribed circle leaves empty.</summary>
    private const double Corners = 1 - (Math.PI / 4);
    private readonly double _width;
    private readonly double _height;

    private Bead(double width, double height)
    {
        _width = width;
        _height = height;
    }

    /// <summary>Width w over all.</summary>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public Length Width => Length.FromMeters(WidthMeters);

    /// <summary>Height h, which is the layer height.</summary>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public Length Height => Length.FromMeters(HeightMeters);

    /// <summary>Area A of the section.</summary>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public Area Area => Area.FromSquareMeters(AreaSquareMeters);

    /// <summary>Width w in metres.</summary>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public double WidthMeters => HeightMeters > 0 ? _width : 0;

    /// <summary>Height h in metres.</summary>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public double HeightMeters => _height > 0 ? _height : throw new InvalidOperationException("This bead was never made; use one of the factories.");

    /// <summary>Area A in square metres.</summary>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public double AreaSquareMeters => HeightMeters * (_width - (Corners * _height));

    /// <summary>d ln A/d ln w at constant height, w·h/A, a ratio of 1 or more: how much faster the area grows than the width.</summary>
    /// <remarks>A width 1 % too small needs this many per cent more flow. From 4/π for a round bead down towards 1 for a flat one.</remarks>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public double AreaSensitivity => _width / (_width - (Corners * HeightMeters));

    /// <summary>dw/dh at constant area, −A/h² + 1 − π/4, a ratio below zero: what one unit of height too much takes from the width.</summary>
    /// <remarks>The link from a first-layer gap that is wrong to lines that are too thin or too wide.</remarks>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public double WidthChangePerHeight => (2 * Corners) - (_width / HeightMeters);

    /// <summary>Spacing of neighbours at which the plastic fills the layer exactly, A/h = w − h·(1 − π/4).</summary>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public Length FillingSpacing => Length.FromMeters(AreaSquareMeters / HeightMeters);

    /// <summary>Whether two beads are equal.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether width and height are the same.</returns>
    public static bool operator ==(Bead left, Bead right) => left.Equals(right);

    /// <summary>Whether two beads differ.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether width or height differ.</returns>
    public static bool operator !=(Bead left, Bead right) => !left.Equals(right);

    /// <summary>A bead of known width and height.</summary>
    /// <param name="width">Width w over all, at least the height.</param>
    /// <param name="height">Height h, greater than zero.</param>
    /// <returns>The bead.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is not positive, or the width is under the height.</exception>
    public static Bead FromWidthAndHeight(Length width, Length height) => FromMeters(width.Meters, height.Meters);

    /// <summary>A bead of known area and height: w = A/h + h·(1 − π/4).</summary>
    /// <param name="area">Area A of the section, at least that of a circle as high as the bead, π·h²/4.</param>
    /// <param name="height">Height h, greater than zero.</param>
    /// <returns>The bead.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is not positive, or the area is under π·h²/4.</exception>
    public static Bead FromAreaAndHeight(Area area, Length height) => FromArea(area.SquareMeters, height.Meters, nameof(area));

    /// <summary>A bead of known width and height, in metres: for loops.</summary>
    /// <param name="width">Width w over all in metres, at least the height.</param>
    /// <param name="height">Height h in metres, greater than zero.</param>
    /// <returns>The bead.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is not positive, or the width is under the height.</exception>
    public static Bead FromMeters(double width, double height)
    {
        Guard.Positive(height);
        Guard.Positive(width);
        return width >= height
            ? new Bead(width, height)
            : throw Guard.Out(nameof(width), width, string.Create(CultureInfo.InvariantCulture, $"at least the height, {height} m"));
    }

    /// <summary>Volumetric flow Q = A·v while this bead is laid down.</summary>
    /// <param name="speed">Speed v of the nozzle along the bead, greater than zero.</param>
    /// <returns>The flow.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not positive.</exception>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public VolumeFlow FlowAt(Speed speed) =>
        VolumeFlow.FromCubicMetersPerSecond(AreaSquareMeters * Guard.Positive(speed.MetersPerSecond, nameof(speed)));

    /// <summary>Length of filament for each length of bead, A/(π·d²/4), a ratio.</summary>
    /// <param name="filamentDiameter">Diameter d of the filament, greater than zero.</param>
    /// <returns>The ratio.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not positive.</exception>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public double FeedRatio(Length filamentDiameter)
    {
        double d = Guard.Positive(filamentDiameter.Meters, nameof(filamentDiameter));
        return AreaSquareMeters / (Math.PI / 4 * d * d);
    }

    /// <summary>Speed at which the filament must be fed, v·A/(π·d²/4).</summary>
    /// <param name="speed">Speed v of the nozzle along the bead, greater than zero.</param>
    /// <param name="filamentDiameter">Diameter d of the filament, greater than zero.</param>
    /// <returns>The feed speed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Speed or diameter is not positive.</exception>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public Speed FeedSpeedAt(Speed speed, Length filamentDiameter) =>
        Speed.FromMetersPerSecond(Guard.Positive(speed.MetersPerSecond, nameof(speed)) * FeedRatio(filamentDiameter));

    /// <summary>Thickness of a wall of parallel beads, w + (n − 1)·spacing.</summary>
    /// <param name="beads">Number n of beads side by side, 1 or more.</param>
    /// <param name="spacing">Distance of their centre lines, greater than zero and at most the width.</param>
    /// <returns>The thickness at the crests.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public Length WallThickness(int beads, Length spacing) =>
        Length.FromMeters(WidthMeters + ((Guard.AtLeast(beads, 1) - 1) * SpacingMeters(spacing)));

    /// <summary>Part of the layer between two neighbours that stays empty, 1 − A/(h·spacing), a ratio: positive for a void, negative for too much plastic.</summary>
    /// <param name="spacing">Distance of the centre lines, greater than zero and at most the width.</param>
    /// <returns>The void as a ratio of the layer's section.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The spacing is out of range.</exception>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public double VoidAt(Length spacing) => 1 - (AreaSquareMeters / (HeightMeters * SpacingMeters(spacing)));

    /// <summary>The same plastic laid down at another height: what a wrong gap makes of the width.</summary>
    /// <param name="height">The height it really gets, greater than zero.</param>
    /// <returns>The bead of equal area.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is not positive, or so large that the bead would be higher than wide.</exception>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public Bead AtHeight(Length height) => FromArea(AreaSquareMeters, height.Meters, nameof(height));

    /// <summary>The bead when the flow is multiplied, at the same height.</summary>
    /// <param name="ratio">Factor on the area, greater than zero.</param>
    /// <returns>The bead of that area.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is not positive, or so small that the bead would be higher than wide.</exception>
    /// <exception cref="InvalidOperationException">This is the default value.</exception>
    public Bead AtFlow(double ratio) => FromArea(Guard.Positive(ratio) * AreaSquareMeters, _height, nameof(ratio));

    /// <inheritdoc/>
    public bool Equals(Bead other) => _width.Equals(other._width) && _height.Equals(other._height);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Bead other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(_width, _height);

    /// <summary>Invariant text.</summary>
    /// <returns>Width and height in millimetres.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"bead {_width * 1e3:G6} mm x {_height * 1e3:G6} mm");

    /// <summary>A(w) in square metres, without checks, for propagation.</summary>
    internal static double SquareMeters(double width, double height) => height * (width - (Corners * height));

    private static Bead FromArea(double area, double height, string name)
    {
        Guard.Positive(height, name == "height" ? name : "height");
        Guard.Positive(area, name);
        double width = (area / height) + (Corners * height);

        // A round bead given by its area may come out narrower than high by rounding alone.
        return width >= height * (1 - 1e-12)
            ? new Bead(Math.Max(width, height), height)
            : throw Guard.Out(name, name == "height" ? height : area, string.Create(
                CultureInfo.InvariantCulture, $"such that the bead is at least as wide as high (area {area:G6} m2 at height {height:G6} m)"));
    }

    private double SpacingMeters(Length spacing)
    {
        double meters = Guard.Positive(spacing.Meters, nameof(spacing));
        return meters <= WidthMeters * (1 + 1e-12)
            ? meters
            : throw Guard.Out(nameof(spacing), meters, string.Create(CultureInfo.InvariantCulture, $"at most the width, {_width} m: beads that do not touch make no wall"));
    }
}
