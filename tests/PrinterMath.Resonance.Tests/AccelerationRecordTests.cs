using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

public sealed class AccelerationRecordTests
{
    private const int Count = 4000;
    private const double Rate = 3200;

    [Fact]
    public void A_clean_record_is_left_as_it_is()
    {
        (double[] t, double[] x, double[] y, double[] z) = Clean();
        AccelerationRecord record = AccelerationRecord.FromSamples(t, x, y, z);
        Assert.Empty(record.Findings);
        Assert.Equal(0, record.Repair.Resampled + record.Repair.Missing + record.Repair.Dropped + record.Repair.Moved);
        Assert.Equal(Rate, record.SampleRate.SiValue, 1e-6);
        Assert.Equal(1e-4, record.RelativeRateUncertainty, 1e-8);
        // 112.5 periods of the tone: half a period is left over, whose mean over the record is 2·(2/2π·112.5) = 5.7e-3.
        Assert.Equal(9.81, record.Gravity.Z.MetersPerSecondSquared, 6e-3);
        Assert.Equal(0, record.Gravity.AngleTo(2).Degrees, 0.1);
        Assert.Equal(0, record.X.Samples.ToArray().Average(), 1e-12);
        Assert.Equal(x[10] - x.Average(), record.X.Samples[10], 1e-12);
    }

    // Samples really taken at jittered times (±20 %, uniform) of a 90 Hz tone of amplitude 2: the polynomial errs by 0.0036·0.2·(2π·90/3200)⁸·2 = 1.4e-9,
    // with unequal steps some times that; left as they stand the values are off by up to 2·2π·90·0.2/3200 = 0.07.
    [Fact]
    public void Jittered_sampling_is_interpolated()
    {
        var random = new Random(5);
        double[] t = [.. Enumerable.Range(0, Count).Select(n => (n + (0.4 * (random.NextDouble() - 0.5))) / Rate)];
        double[] x = [.. t.Select(Tone)];
        AccelerationRecord record = AccelerationRecord.FromSamples(t, x, x, [.. x.Select(v => v + 9.81)]);
        Assert.Equal(Count, record.Repair.Resampled);
        double worst = 0;
        double start = FirstTime(t);
        double shift = x.Average();
        for (int n = 3; n < Count - 3; n++)
        {
            worst = Math.Max(worst, Math.Abs(record.X.Samples[n] + shift - Tone(start + (n / record.X.SampleRateHertz))));
        }

        // The grid's own start and rate are uncertain by 0.115·period/√4000·2: 2·2π·90·1.2e-6 s = 1.3e-3.
        Assert.InRange(worst, 0, 3e-3);
        Assert.Equal(1, record.SampleRate.SiValue / Rate, 1e-5);
    }

    [Fact]
    public void Gaps_duplicates_and_disorder_are_repaired_and_counted()
    {
        (double[] t, double[] x, double[] y, double[] z) = Clean();
        List<int> rows = [.. Enumerable.Range(0, Count).Where(n => n is (< 1000 or > 1004) and not 2000)];
        rows.Insert(500, rows[500]);
        (rows[3000], rows[3001]) = (rows[3001], rows[3000]);
        AccelerationRecord record = AccelerationRecord.FromSamples(Pick(t, rows), Pick(x, rows), Pick(y, rows), Pick(z, rows));
        Assert.Equal(2, record.Repair.Gaps);
        Assert.Equal(6, record.Repair.Missing);
        Assert.Equal(1, record.Repair.Dropped);
        Assert.Equal(1, record.Repair.Moved);
        Assert.Equal(Count, record.X.Count);
        Assert.Equal(Rate, record.SampleRate.SiValue, 1e-6);
        Assert.Equal(
            [RecordFindings.Gaps, RecordFindings.Unsorted, RecordFindings.Duplicates],
            record.Findings.Select(f => f.Code));
        Assert.Equal(5, record.Findings[0].Numbers.Single(n => n.Name == "longest").Value);
    }

    [Theory]
    [InlineData(1e3, "milliseconds")]
    [InlineData(1e6, "microseconds")]
    public void Times_in_other_units_are_noticed(double factor, string word)
    {
        (double[] t, double[] x, double[] y, double[] z) = Clean();
        AccelerationRecord record = AccelerationRecord.FromSamples([.. t.Select(v => v * factor)], x, y, z);
        Finding finding = Assert.Single(record.Findings);
        Assert.Equal(RecordFindings.TimeUnit, finding.Code);
        Assert.Contains(word, finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1 / 9.80665, RecordFindings.AccelerationUnit)]
    [InlineData(1000, RecordFindings.AccelerationUnit)]
    public void Acceleration_in_other_units_is_noticed(double factor, string code)
    {
        (double[] t, double[] x, double[] y, double[] z) = Clean();
        double[] Times(double[] v) => [.. v.Select(a => a * factor)];
        Assert.Equal([code], AccelerationRecord.FromSamples(t, Times(x), Times(y), Times(z)).Findings.Select(f => f.Code));
    }

    [Fact]
    public void Dead_and_saturated_axes_are_noticed()
    {
        (double[] t, double[] x, _, double[] z) = Clean();
        AccelerationRecord record = AccelerationRecord.FromSamples(t, [.. x.Select(v => Math.Clamp(v, -1.5, 1.5))], new double[Count], z);
        Assert.Equal([RecordFindings.Saturated, RecordFindings.DeadAxis], record.Findings.Select(f => f.Code));
        AccelerationRecord known = AccelerationRecord.FromSamples(t, x, x, z, new AccelerationRecordOptions { FullScale = Acceleration.FromMetersPerSecondSquared(11.5) });
        Assert.Equal([RecordFindings.Saturated], known.Findings.Select(f => f.Code));
    }

    // The crest of a sine in steps of 0.05 has 2.4 times as many samples as the step below: not saturation.
    [Fact]
    public void A_quantised_tone_is_not_called_saturated()
    {
        (double[] t, double[] x, double[] y, double[] z) = Clean();
        double[] Steps(double[] v) => [.. v.Select(a => Math.Round(a / 0.05) * 0.05)];
        Assert.Empty(AccelerationRecord.FromSamples(t, Steps(x), Steps(y), Steps(z)).Findings);
    }

    // Stamps cut to whole milliseconds at 3200 Hz: rows go by their count, and the rate still comes out: the cut is uniform, so its slope error is below 1 ms/(1.25 s·√4000).
    [Fact]
    public void Coarse_stamps_are_placed_by_count()
    {
        (double[] t, double[] x, double[] y, double[] z) = Clean();
        AccelerationRecord record = AccelerationRecord.FromSamples([.. t.Select(v => Math.Floor(v * 1000) / 1000)], x, y, z);
        Assert.Equal([RecordFindings.CoarseStamps], record.Findings.Select(f => f.Code));
        Assert.Equal(Count, record.X.Count);
        Assert.Equal(1, record.SampleRate.SiValue / Rate, 5e-5);
    }

    [Fact]
    public void Times_that_stand_still_hold_no_rate()
    {
        double[] same = new double[20];
        double[] other = [.. Enumerable.Range(0, 20).Select(n => (double)n)];
        AccelerationRecord record = AccelerationRecord.FromSamples(same, other, other, other);
        Assert.False(record.TryGetSignals(out _, out _, out _));
        Assert.Equal(RecordFindings.NoClock, Assert.Throws<IndeterminateException>(() => record.X).Finding!.Code);
    }

    [Fact]
    public void Callers_mistakes_are_refused()
    {
        double[] eight = [0, 1, 2, 3, 4, 5, 6, 7];
        Assert.Throws<ArgumentOutOfRangeException>(() => AccelerationRecord.FromSamples([0, 1], [0, 1], [0, 1], [0, 1]));
        Assert.Throws<ArgumentException>(() => AccelerationRecord.FromSamples(eight, eight, eight, [0.0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => AccelerationRecord.FromSamples(eight, eight, eight, [0, 1, 2, 3, double.NaN, 5, 6, 7]));
        Assert.Throws<ArgumentOutOfRangeException>(() => AccelerationRecord.FromSamples(eight, eight, eight, eight, new AccelerationRecordOptions { RelativeClockUncertainty = 1 }));
    }

    private static double Tone(double t) => 2 * Math.Sin(2 * Math.PI * 90 * t);

    private static double[] Pick(double[] values, List<int> rows) => [.. rows.Select(row => values[row])];

    /// <summary>Start of the grid by ordinary least squares, which on jitter without outliers is what the robust line estimates too.</summary>
    private static double FirstTime(double[] t)
    {
        double mean = (t.Length - 1) / 2.0, meanTime = t.Average(), product = 0, spread = 0;
        for (int n = 0; n < t.Length; n++)
        {
            product += (n - mean) * (t[n] - meanTime);
            spread += (n - mean) * (n - mean);
        }

        return meanTime - (product / spread * mean);
    }

    private static (double[] T, double[] X, double[] Y, double[] Z) Clean()
    {
        double[] t = [.. Enumerable.Range(0, Count).Select(n => n / Rate)];
        return (t, [.. t.Select(Tone)], [.. t.Select(v => Math.Cos(371 * v))], [.. t.Select(v => 9.81 + Tone(v + 0.001))]);
    }
}
