using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>Joins repeated readings of one length: their scatter, the step of the scale, and what the instrument itself is worth.</summary>
/// <remarks>
/// u² = s²/n + step²/12 + u²(instrument). Scatter shrinks with the number of readings; step and instrument do not, since readings that fall on
/// the same step share its error. Readings that are all alike are legal: the step then stands for the scatter it hides.
/// Source: JCGM 100:2008, 4.2.3, F.2.2.1.
/// Caution: let the part and the nozzle cool before measuring near them.
/// </remarks>
/// <example><code>
/// UncertaintyBudget&lt;Length&gt; wall = CaliperReadings.Combine(
///     [Length.FromMillimeters(0.47), Length.FromMillimeters(0.46), Length.FromMillimeters(0.47)],
///     step: Length.FromMillimeters(0.01), instrument: Length.FromMillimeters(0.01));
/// </code></example>
public static class CaliperReadings
{
    /// <summary>Name of the budget line for the scatter.</summary>
    internal const string Scatter = "repeated readings";

    /// <summary>Name of the budget line for the step of the scale.</summary>
    internal const string Step = "step of the scale";

    /// <summary>Name of the budget line for the instrument.</summary>
    internal const string Instrument = "instrument";

    /// <summary>The mean of readings with its budget.</summary>
    /// <param name="readings">At least one reading, each greater than zero.</param>
    /// <param name="step">Smallest step of the scale, greater than zero.</param>
    /// <param name="instrument">Standard uncertainty of the instrument, the same for all readings; null for none known.</param>
    /// <returns>The length and where its uncertainty comes from.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are no readings, or a number is not positive.</exception>
    public static UncertaintyBudget<Length> Combine(IReadOnlyList<Length> readings, Length step, Length? instrument = null)
    {
        Guard.AtLeast(Guard.NotNull(readings).Count, 1, nameof(readings));
        double[] meters = [.. readings.Select(reading => Guard.Positive(reading.Meters, nameof(readings)))];
        return Combine<Length>(
            meters,
            Guard.Positive(step.Meters, nameof(step)) / Math.Sqrt(12),
            instrument is { } known ? Guard.Positive(known.Meters, nameof(instrument)) : 0);
    }

    /// <summary>The mean of SI readings; a step or instrument of zero adds no line.</summary>
    internal static UncertaintyBudget<T> Combine<T>(double[] readings, double stepUncertainty, double instrument)
        where T : struct
    {
        double mean = readings[0], deviation = 0;
        if (readings.Length > 1)
        {
            SampleSummary summary = SampleSummary.Of(readings);
            (mean, deviation) = (summary.Mean, summary.StandardDeviation);
        }

        List<BudgetInput> inputs = [];
        if (deviation > 0)
        {
            inputs.Add(BudgetInput.Repeated(
                Scatter, Measured<T>.FromSi(0, deviation / Math.Sqrt(readings.Length), readings.Length - 1), readings.Length));
        }

        Add(Step, stepUncertainty, InputShape.Rectangular);
        Add(Instrument, instrument, InputShape.Normal);
        double[] sensitivities = new double[inputs.Count];
        Array.Fill(sensitivities, 1);
        return Propagation.FirstOrder<T>(mean, inputs, sensitivities);

        void Add(string name, double u, InputShape shape)
        {
            if (u > 0)
            {
                inputs.Add(BudgetInput.Of(name, Measured<T>.FromSi(0, u)).WithShape(shape));
            }
        }
    }
}
