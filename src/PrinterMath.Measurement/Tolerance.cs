namespace PrinterMath.Measurement;

/// <summary>Makes the limits that measured values are judged against.</summary>
/// <example><code>
/// Tolerance&lt;Force&gt; window = Tolerance.Between(Force.FromNewtons(20), Force.FromNewtons(30));
/// Verdict&lt;Force&gt; verdict = window.Judge(tension);
/// </code></example>
public static class Tolerance
{
    /// <summary>Within two limits, both included.</summary>
    /// <param name="lower">Lower limit.</param>
    /// <param name="upper">Upper limit, above the lower one.</param>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <returns>The tolerance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A limit is not finite, or they are not in order.</exception>
    public static Tolerance<T> Between<T>(T lower, T upper)
        where T : struct
    {
        QuantityUnits<T> units = QuantityUnits<T>.Known;
        double low = Guard.Finite(units.ToSi(lower), nameof(lower));
        double high = Guard.Finite(units.ToSi(upper), nameof(upper));
        return high > low ? new Tolerance<T>(low, high) : throw Guard.Out(nameof(upper), upper, $"above lower, {lower}");
    }

    /// <summary>Within a distance of a nominal value, both ends included.</summary>
    /// <param name="nominal">The nominal value.</param>
    /// <param name="plusMinus">Distance to either side, greater than zero.</param>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <returns>The tolerance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or the distance is not positive.</exception>
    public static Tolerance<T> Around<T>(T nominal, T plusMinus)
        where T : struct
    {
        QuantityUnits<T> units = QuantityUnits<T>.Known;
        double middle = Guard.Finite(units.ToSi(nominal), nameof(nominal));
        double half = Guard.Positive(units.ToSi(plusMinus), nameof(plusMinus));
        return new Tolerance<T>(middle - half, middle + half);
    }

    /// <summary>At most an upper limit.</summary>
    /// <param name="upper">Upper limit, included.</param>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <returns>The tolerance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not finite.</exception>
    public static Tolerance<T> AtMost<T>(T upper)
        where T : struct =>
        new(double.NegativeInfinity, Guard.Finite(QuantityUnits<T>.Known.ToSi(upper), nameof(upper)));

    /// <summary>At least a lower limit.</summary>
    /// <param name="lower">Lower limit, included.</param>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <returns>The tolerance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not finite.</exception>
    public static Tolerance<T> AtLeast<T>(T lower)
        where T : struct =>
        new(Guard.Finite(QuantityUnits<T>.Known.ToSi(lower), nameof(lower)), double.PositiveInfinity);
}
