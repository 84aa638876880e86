using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>
/// What axes out of square do to coordinates, and the correction: with the deviation ε of <see cref="Squareness"/> (positive when the angle between +x and +y is acute) a command (x, y) lands at
/// (x + y·sin ε, y·cos ε), x along the true x axis.
/// </summary>
/// <remarks>The correction inverts that exactly: x = X − Y·tan ε, y = Y/cos ε. The x axis stays where it is; lengths along each axis are taken as right. Equality by value; the default changes nothing.</remarks>
/// <example><code>(Length x, Length y) = shear.Command(Length.FromMillimeters(100), Length.FromMillimeters(100));</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public readonly struct AxisShear : IEquatable<AxisShear>
{
    private readonly double _radians;

    private AxisShear(double radians)
    {
        _radians = radians;
    }

    /// <summary>The deviation ε from square that is corrected.</summary>
    public Angle Deviation => Angle.FromRadians(_radians);

    /// <summary>Shear tan ε, a ratio: how far towards −x a command moves for each length along y.</summary>
    public double Ratio => Math.Tan(_radians);

    /// <summary>The shear for a deviation from square.</summary>
    /// <param name="deviation">90° less the angle between +x and +y, within ±30°.</param>
    /// <returns>The shear.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The deviation is out of range.</exception>
    public static AxisShear For(Angle deviation) => new(Guard.Between(deviation.Radians, -Math.PI / 6, Math.PI / 6, nameof(deviation)));

    /// <summary>What to command so that a wanted place is reached.</summary>
    /// <param name="x">Wanted position along the true x axis.</param>
    /// <param name="y">Wanted position square to it.</param>
    /// <returns>The command.</returns>
    public (Length X, Length Y) Command(Length x, Length y) =>
        (Length.FromMeters(x.Meters - (y.Meters * Ratio)), Length.FromMeters(y.Meters / Math.Cos(_radians)));

    /// <summary>Where a command lands.</summary>
    /// <param name="x">Commanded x.</param>
    /// <param name="y">Commanded y.</param>
    /// <returns>The place, along the true x axis and square to it.</returns>
    public (Length X, Length Y) Landing(Length x, Length y) =>
        (Length.FromMeters(x.Meters + (y.Meters * Math.Sin(_radians))), Length.FromMeters(y.Meters * Math.Cos(_radians)));

    /// <summary>Turns wanted places into commands, in place and without allocation.</summary>
    /// <param name="x">Positions along x in any one unit; commands afterwards.</param>
    /// <param name="y">Positions along y in the same unit; commands afterwards.</param>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    public void Command(Span<double> x, Span<double> y)
    {
        if (x.Length != y.Length)
        {
            throw Guard.Refused(nameof(y), $"There are {x.Length} positions along x and {y.Length} along y.");
        }

        double shear = Ratio, stretch = 1 / Math.Cos(_radians);
        for (int i = 0; i < x.Length; i++)
        {
            x[i] -= y[i] * shear;
            y[i] *= stretch;
        }
    }

    /// <inheritdoc/>
    public bool Equals(AxisShear other) => _radians.Equals(other._radians);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is AxisShear other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => _radians.GetHashCode();

    /// <summary>Invariant text.</summary>
    /// <returns>The deviation in degrees.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"shear for {_radians * 180 / Math.PI:0.####}° from square");

    /// <summary>Equality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether both are the same shear.</returns>
    public static bool operator ==(AxisShear left, AxisShear right) => left.Equals(right);

    /// <summary>Inequality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether they differ.</returns>
    public static bool operator !=(AxisShear left, AxisShear right) => !left.Equals(right);
}
