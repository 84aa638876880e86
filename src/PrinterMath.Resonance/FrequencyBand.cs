using System.Globalization;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>A range of frequencies.</summary>
/// <remarks>Equality by value in hertz; the default is the empty band at zero.</remarks>
public readonly struct FrequencyBand : IEquatable<FrequencyBand>
{
    internal FrequencyBand(double lowerHertz, double upperHertz)
    {
        LowerHertz = lowerHertz;
        UpperHertz = upperHertz;
    }

    /// <summary>Lower end.</summary>
    public Frequency Lower => Frequency.FromHertz(LowerHertz);

    /// <summary>Upper end.</summary>
    public Frequency Upper => Frequency.FromHertz(UpperHertz);

    /// <summary>Lower end in hertz, for computation.</summary>
    public double LowerHertz { get; }

    /// <summary>Upper end in hertz, for computation.</summary>
    public double UpperHertz { get; }

    /// <summary>Equality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether both ends agree.</returns>
    public static bool operator ==(FrequencyBand left, FrequencyBand right) => left.Equals(right);

    /// <summary>Inequality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether an end differs.</returns>
    public static bool operator !=(FrequencyBand left, FrequencyBand right) => !left.Equals(right);

    /// <summary>A band.</summary>
    /// <param name="lower">Lower end, greater than zero.</param>
    /// <param name="upper">Upper end, at least the lower.</param>
    /// <returns>The band.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An end is not positive or they are the wrong way round.</exception>
    public static FrequencyBand Between(Frequency lower, Frequency upper)
    {
        double low = Guard.Positive(lower.Hertz, nameof(lower));
        double high = Guard.Positive(upper.Hertz, nameof(upper));
        return new FrequencyBand(low, high >= low ? high : throw Guard.Out(nameof(upper), high, FormattableString.Invariant($"at least {low} Hz")));
    }

    /// <inheritdoc/>
    public bool Equals(FrequencyBand other) => LowerHertz.Equals(other.LowerHertz) && UpperHertz.Equals(other.UpperHertz);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is FrequencyBand other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(LowerHertz, UpperHertz);

    /// <summary>Invariant text.</summary>
    /// <returns>Both ends.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{LowerHertz:G5} to {UpperHertz:G5} Hz");
}
