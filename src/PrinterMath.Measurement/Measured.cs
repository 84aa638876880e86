using UnitsNet;

namespace PrinterMath.Measurement;

/// <summary>
/// Makes measured numbers. Each factory states where the standard uncertainty comes from: the data (type A), or a
/// resolution, tolerance or certificate (type B).
/// </summary>
/// <remarks>
/// A linear quantity (<see cref="Length"/>, <see cref="Force"/>, ...) or a plain ratio (<see cref="double"/>) gives a
/// <see cref="Measured{T}"/>; a temperature, whose uncertainty is a difference, gives a <see cref="MeasuredTemperature"/>.
/// Source: JCGM 100:2008 (GUM), 4.2 (type A) and 4.3 (type B).
/// </remarks>
/// <example><code>
/// Measured&lt;Length&gt; span = Measured.Of(Length.FromMillimeters(242), Length.FromMillimeters(0.5));
/// Measured&lt;Mass&gt; sample = Measured.FromResolution(Mass.FromGrams(8.41), Mass.FromGrams(0.01));
/// </code></example>
public static class Measured
{
    /// <summary>A value with its standard uncertainty.</summary>
    /// <param name="value">The estimate.</param>
    /// <param name="standardUncertainty">Standard uncertainty, greater than zero; for a value without any use <see cref="Exact{T}"/>.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of the uncertainty, 1 or more; infinite if not stated.</param>
    /// <typeparam name="T">A quantity the kernel knows, or <see cref="double"/> for a ratio.</typeparam>
    /// <returns>The measured number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, the uncertainty is not positive, or the degrees of freedom are below 1.</exception>
    /// <exception cref="NotSupportedException">The kernel does not know the quantity <typeparamref name="T"/>.</exception>
    public static Measured<T> Of<T>(T value, T standardUncertainty, double degreesOfFreedom = double.PositiveInfinity)
        where T : struct
    {
        QuantityUnits<T> units = QuantityUnits<T>.Known;
        return Measured<T>.FromSi(
            Guard.Finite(units.ToSi(value), nameof(value)),
            Guard.Positive(units.ToSi(standardUncertainty), nameof(standardUncertainty)),
            degreesOfFreedom);
    }

    /// <summary>A temperature with its standard uncertainty, which is a difference.</summary>
    /// <param name="value">The estimate, above absolute zero.</param>
    /// <param name="standardUncertainty">Standard uncertainty, greater than zero.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of the uncertainty, 1 or more; infinite if not stated.</param>
    /// <returns>The measured temperature.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or out of range.</exception>
    public static MeasuredTemperature Of(Temperature value, TemperatureDelta standardUncertainty, double degreesOfFreedom = double.PositiveInfinity) =>
        MeasuredTemperature.FromKelvins(
            value.Kelvins,
            Guard.Positive(standardUncertainty.Kelvins, nameof(standardUncertainty)),
            degreesOfFreedom);

    /// <summary>A value that has no uncertainty: a definition, a count, a nominal dimension.</summary>
    /// <param name="value">The value.</param>
    /// <typeparam name="T">A quantity the kernel knows, or <see cref="double"/> for a ratio.</typeparam>
    /// <returns>The value with standard uncertainty zero and infinite degrees of freedom.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Measured<T> Exact<T>(T value)
        where T : struct =>
        Measured<T>.FromSi(Guard.Finite(QuantityUnits<T>.Known.ToSi(value), nameof(value)), 0, double.PositiveInfinity);

    /// <summary>Type A: the mean of repeated readings, u = s/√n with n − 1 degrees of freedom.</summary>
    /// <param name="readings">At least two readings of the same thing, not all alike.</param>
    /// <typeparam name="T">A quantity the kernel knows, or <see cref="double"/> for a ratio.</typeparam>
    /// <returns>Mean and its standard uncertainty.</returns>
    /// <remarks>Source: JCGM 100:2008, 4.2.3. Readings that are all alike hide their scatter behind the resolution: use <see cref="FromResolution{T}"/>.</remarks>
    /// <exception cref="ArgumentException">Fewer than two readings, or all alike.</exception>
    public static Measured<T> FromReadings<T>(IReadOnlyList<T> readings)
        where T : struct
    {
        Guard.NotNull(readings);
        QuantityUnits<T> units = QuantityUnits<T>.Known;
        if (readings.Count < 2)
        {
            throw new ArgumentException($"readings has {readings.Count} entries; a scatter needs at least 2.", nameof(readings));
        }

        double[] si = new double[readings.Count];
        for (int i = 0; i < si.Length; i++)
        {
            si[i] = units.ToSi(readings[i]);
        }

        Guard.AllFinite(si, nameof(readings));
        SampleSummary summary = SampleSummary.Of(si);
        if (summary.StandardDeviation == 0)
        {
            throw new ArgumentException("All readings are alike, so their scatter is hidden by the resolution; use FromResolution.", nameof(readings));
        }

        return Measured<T>.FromSi(summary.Mean, summary.StandardDeviation / Math.Sqrt(si.Length), si.Length - 1);
    }

    /// <summary>Type B: a reading known to one step of the scale, u = step/√12.</summary>
    /// <param name="value">The reading, taken as the middle of its step.</param>
    /// <param name="step">Smallest step of the scale, greater than zero.</param>
    /// <typeparam name="T">A quantity the kernel knows, or <see cref="double"/> for a ratio.</typeparam>
    /// <returns>The reading with a rectangular distribution one step wide.</returns>
    /// <remarks>Source: JCGM 100:2008, F.2.2.1.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or the step is not positive.</exception>
    public static Measured<T> FromResolution<T>(T value, T step)
        where T : struct
    {
        QuantityUnits<T> units = QuantityUnits<T>.Known;
        return Measured<T>.FromSi(
            Guard.Finite(units.ToSi(value), nameof(value)),
            Guard.Positive(units.ToSi(step), nameof(step)) / Math.Sqrt(12),
            double.PositiveInfinity);
    }

    /// <summary>Type B: somewhere between two limits, no place more likely than another; u = (upper − lower)/√12.</summary>
    /// <param name="lower">Lower limit.</param>
    /// <param name="upper">Upper limit, above the lower one.</param>
    /// <typeparam name="T">A quantity the kernel knows, or <see cref="double"/> for a ratio.</typeparam>
    /// <returns>The middle of the range and its standard uncertainty.</returns>
    /// <remarks>Source: JCGM 100:2008, 4.3.7, equations (6) and (7).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A limit is not finite, or they are not in order.</exception>
    public static Measured<T> FromRange<T>(T lower, T upper)
        where T : struct
    {
        QuantityUnits<T> units = QuantityUnits<T>.Known;
        double low = Guard.Finite(units.ToSi(lower), nameof(lower));
        double high = Guard.Finite(units.ToSi(upper), nameof(upper));
        return high > low
            ? Measured<T>.FromSi(low + ((high - low) / 2), (high - low) / Math.Sqrt(12), double.PositiveInfinity)
            : throw Guard.Out(nameof(upper), upper, $"above lower, {lower}");
    }

    /// <summary>Type B: a value from a certificate or data sheet that states an expanded uncertainty.</summary>
    /// <param name="value">The stated value.</param>
    /// <param name="expandedUncertainty">Stated expanded uncertainty U, greater than zero.</param>
    /// <param name="coverageFactor">Stated coverage factor k, greater than zero.</param>
    /// <typeparam name="T">A quantity the kernel knows, or <see cref="double"/> for a ratio.</typeparam>
    /// <returns>The value with u = U/k.</returns>
    /// <remarks>Source: JCGM 100:2008, 4.3.3.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or not positive.</exception>
    public static Measured<T> FromCertificate<T>(T value, T expandedUncertainty, double coverageFactor = 2)
        where T : struct
    {
        QuantityUnits<T> units = QuantityUnits<T>.Known;
        return Measured<T>.FromSi(
            Guard.Finite(units.ToSi(value), nameof(value)),
            Guard.Positive(units.ToSi(expandedUncertainty), nameof(expandedUncertainty)) / Guard.Positive(coverageFactor),
            double.PositiveInfinity);
    }
}
