using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Looks a record over and words what is wrong with it.</summary>
internal static class RecordInspection
{
    /// <summary>No vibration sensor worth using samples slower; stamps in milliseconds would show rates below it.</summary>
    private const double SlowestPlausibleHertz = 10;

    private const double LargestJitterShare = 0.2;
    private static readonly string[] AxisNames = ["x", "y", "z"];

    internal static Finding NoClock(int rows) => new(
        RecordFindings.NoClock,
        FindingSeverity.Blocking,
        string.Create(CultureInfo.InvariantCulture, $"Only {rows} rows have different times: no sample rate can be found."),
        new FindingNumber("rows", rows, "1"));

    internal static IEnumerable<Finding> Of(TimedRows rows, SampleClock clock, RecordRepair repair, AccelerationVector gravity, double? fullScale) =>
    [
        .. OfTimes(rows, clock, repair),
        .. OfUnits(gravity),
        .. Enumerable.Range(0, 3).SelectMany(axis => OfAxis(axis, rows.Axes[axis], fullScale)),
    ];

    private static IEnumerable<Finding> OfTimes(TimedRows rows, SampleClock clock, RecordRepair repair)
    {
        double rate = 1 / clock.Period;
        if (repair.Moved > 0)
        {
            yield return Say(RecordFindings.Unsorted, FindingSeverity.Note, $"{repair.Moved} rows stood before an earlier time; the record was sorted.", ("moved", repair.Moved, "1"));
        }

        if (repair.Dropped > 0)
        {
            yield return Say(RecordFindings.Duplicates, FindingSeverity.Note, $"{repair.Dropped} rows repeat a time and were dropped.", ("dropped", repair.Dropped, "1"));
        }

        if (rows.Coarse)
        {
            yield return Say(RecordFindings.CoarseStamps, FindingSeverity.Caution, $"Many rows share a time: the stamps are coarser than the {rate:G4} Hz of the samples, which were placed by their count; gaps cannot be seen.", ("rate", rate, "Hz"));
        }

        if (repair.Gaps > 0)
        {
            int longest = Enumerable.Range(1, clock.Places.Length - 1).Max(i => clock.Places[i] - clock.Places[i - 1]) - 1;
            yield return Say(RecordFindings.Gaps, FindingSeverity.Caution, $"{repair.Missing} samples are missing in {repair.Gaps} gaps, the longest of {longest}; straight lines fill them.", ("missing", repair.Missing, "1"), ("gaps", repair.Gaps, "1"), ("longest", longest, "1"));
        }

        double share = clock.Jitter / clock.Period;
        if (share > LargestJitterShare && !rows.Coarse)
        {
            yield return Say(RecordFindings.Jitter, FindingSeverity.Caution, $"The stamps scatter by {share * 100:0} % of the sample period.", ("jitter", clock.Jitter, "s"), ("share", share, "1"));
        }

        if (rate < SlowestPlausibleHertz)
        {
            string unit = rate > SlowestPlausibleHertz / 1000 ? "milliseconds" : "microseconds";
            yield return Say(RecordFindings.TimeUnit, FindingSeverity.Caution, $"A rate of {rate:G3} Hz is too slow for vibration: the times look like {unit}, not seconds.", ("rate", rate, "Hz"));
        }
    }

    private static IEnumerable<Finding> OfUnits(AccelerationVector gravity)
    {
        double g = gravity.MetersPerSecondSquared;
        (string, double, string) number = ("mean", g, "m/s2");
        switch (g)
        {
            case > 0.8 and < 1.2:
                yield return Say(RecordFindings.AccelerationUnit, FindingSeverity.Caution, $"Gravity reads {g:G3} where 9.8 m/s² is expected: the values look like units of g.", number);
                break;
            case > 7800 and < 11_800:
                yield return Say(RecordFindings.AccelerationUnit, FindingSeverity.Caution, $"Gravity reads {g:G4} where 9.8 m/s² is expected: the values look like mm/s².", number);
                break;
            case < 0.5:
                yield return Say(RecordFindings.NoGravity, FindingSeverity.Note, $"The mean acceleration is only {g:G3} m/s²: gravity was removed before, and the sensor's orientation cannot be told.", number);
                break;
        }
    }

    private static IEnumerable<Finding> OfAxis(int axis, double[] values, double? fullScale)
    {
        string name = AxisNames[axis];
        double lowest = values.Min();
        double highest = values.Max();
        if (lowest == highest)
        {
            yield return Say(RecordFindings.DeadAxis, FindingSeverity.Caution, $"The {name} axis shows {lowest:G4} m/s² throughout: a dead axis.", ("axis", axis, "1"), ("value", lowest, "m/s2"));
        }
        else if (fullScale is { } limit)
        {
            int at = values.Count(value => Math.Abs(value) >= 0.999 * limit);
            if (at > 0)
            {
                yield return Saturated(axis, at);
            }
        }
        else
        {
            int piled = Piled(values, highest, 1) + Piled(values, lowest, -1);
            if (piled > 0)
            {
                yield return Saturated(axis, piled);
            }
        }
    }

    private static Finding Saturated(int axis, int count) => Say(
        RecordFindings.Saturated, FindingSeverity.Caution, $"The {AxisNames[axis]} axis stands at the end of its range in {count} samples.", ("axis", axis, "1"), ("samples", count, "1"));

    /// <summary>
    /// Samples at an extreme when there are at least 5, some next to each other, and more than 5 times as many as at the next value: the crest of a quantised sine has
    /// √2 + 1 times as many.
    /// </summary>
    private static int Piled(double[] values, double extreme, int sign)
    {
        int at = 0;
        int atNext = 0;
        bool adjacent = false;
        double next = double.NegativeInfinity;
        for (int i = 0; i < values.Length; i++)
        {
            if (values[i] == extreme)
            {
                at++;
                adjacent |= i > 0 && values[i - 1] == extreme;
            }
            else if (sign * values[i] > next)
            {
                next = sign * values[i];
                atNext = 1;
            }
            else if (sign * values[i] == next)
            {
                atNext++;
            }
        }

        return at >= 5 && adjacent && at > 5 * atNext ? at : 0;
    }

    private static Finding Say(string code, FindingSeverity severity, FormattableString sentence, params (string Name, double Value, string Unit)[] numbers) => new(
        code,
        severity,
        sentence.ToString(CultureInfo.InvariantCulture),
        [.. numbers.Select(n => new FindingNumber(n.Name, n.Value, n.Unit))]);
}
