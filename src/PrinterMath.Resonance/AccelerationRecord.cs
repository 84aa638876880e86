using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>Acceleration in three axes at a uniform rate, made from time-stamped samples, with what had to be repaired.</summary>
/// <remarks>
/// The sample rate is the slope of a robust regression of time on sample count (Tukey's biweight); its uncertainty joins that slope's (type A) with the clock's
/// (type B), which no data can show. The mean of each axis is removed as gravity. Nothing is converted on suspicion: a doubtful unit is a finding.
/// Source: robust regression, Beaton, Tukey, 1974, "The fitting of power series", Technometrics 16(2) (from memory); uncertainty JCGM 100:2008, 4.3 and 5.1.2.
/// </remarks>
/// <example><code>
/// AccelerationRecord record = AccelerationRecord.FromSamples(times, x, y, z);
/// if (record.TryGetSignals(out SampledSignal? alongX, out _, out _)) { PowerSpectrum spectrum = Welch.Estimate(alongX); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class AccelerationRecord
{
    private const int FewestRows = 8;

    private readonly SampledSignal[]? _signals;
    private readonly ReadOnlyCollection<Finding> _findings;
    private readonly Measured<Frequency> _rate;

    private AccelerationRecord(SampledSignal[]? signals, Measured<Frequency> rate, AccelerationVector gravity, RecordRepair repair, IEnumerable<Finding> findings)
    {
        _signals = signals;
        _rate = rate;
        Gravity = gravity;
        Repair = repair;
        _findings = Array.AsReadOnly([.. findings.OrderByDescending(finding => finding.Severity)]);
    }

    /// <summary>Acceleration along the sensor's x in m/s², mean removed.</summary>
    /// <exception cref="IndeterminateException">The record has no usable clock.</exception>
    public SampledSignal X => Signal(0);

    /// <summary>Acceleration along the sensor's y in m/s², mean removed.</summary>
    /// <exception cref="IndeterminateException">The record has no usable clock.</exception>
    public SampledSignal Y => Signal(1);

    /// <summary>Acceleration along the sensor's z in m/s², mean removed.</summary>
    /// <exception cref="IndeterminateException">The record has no usable clock.</exception>
    public SampledSignal Z => Signal(2);

    /// <summary>The sample rate, with the clock's uncertainty in it.</summary>
    /// <exception cref="IndeterminateException">The record has no usable clock.</exception>
    public Measured<Frequency> SampleRate => _signals is null ? throw new IndeterminateException(_findings[0]) : _rate;

    /// <summary>Relative standard uncertainty of the sample rate, a ratio: every frequency read from this record carries it.</summary>
    /// <exception cref="IndeterminateException">The record has no usable clock.</exception>
    public double RelativeRateUncertainty => SampleRate.RelativeStandardUncertainty;

    /// <summary>What was removed as gravity: the mean of each axis. At rest it points up.</summary>
    public AccelerationVector Gravity { get; }

    /// <summary>What was repaired.</summary>
    public RecordRepair Repair { get; }

    /// <summary>What was noticed, see <see cref="RecordFindings"/>; the weightiest first.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>A record from time-stamped samples.</summary>
    /// <param name="times">Times in seconds, at least 8; any order.</param>
    /// <param name="x">Acceleration along the sensor's x, m/s².</param>
    /// <param name="y">Acceleration along the sensor's y, m/s².</param>
    /// <param name="z">Acceleration along the sensor's z, m/s².</param>
    /// <param name="options">Clock, interpolation and range; null for the defaults.</param>
    /// <returns>The record.</returns>
    /// <exception cref="ArgumentException">The spans are not equally long.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 8 samples, a number that is not finite, or an option out of range.</exception>
    public static AccelerationRecord FromSamples(
        ReadOnlySpan<double> times, ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> z, AccelerationRecordOptions? options = null)
    {
        Guard.AtLeast(times.Length, FewestRows, nameof(times));
        if (x.Length != times.Length || y.Length != times.Length || z.Length != times.Length)
        {
            throw Guard.Refused(nameof(x), $"{times.Length} times need as many values in each axis; there are {x.Length}, {y.Length} and {z.Length}.");
        }

        Guard.AllFinite(times);
        Guard.AllFinite(x);
        Guard.AllFinite(y);
        Guard.AllFinite(z);
        options ??= new AccelerationRecordOptions();
        double clock = Guard.Between(options.RelativeClockUncertainty, 0, 0.1, nameof(options));
        double? fullScale = options.FullScale is { } range ? Guard.Positive(range.MetersPerSecondSquared, nameof(options)) : null;

        var rows = TimedRows.Sort(times, x, y, z);
        AccelerationVector gravity = new(rows.Axes[0].Average(), rows.Axes[1].Average(), rows.Axes[2].Average());
        if (rows.Times.Length < FewestRows || rows.Times[^1] == rows.Times[0])
        {
            var none = new RecordRepair(rows.Moved, rows.Dropped, 0, 0, 0, 0);
            return new AccelerationRecord(null, default, gravity, none, [RecordInspection.NoClock(rows.Times.Length)]);
        }

        var grid = SampleClock.Fit(rows.Times, rows.Coarse);
        bool inPlace = rows.Coarse || options.Jitter == StampJitter.OfStamping || IsUniform(rows.Times, grid);
        double[][] uniform =
        [
            .. rows.Axes.Select(axis => inPlace
                ? UniformGrid.Place(grid.Places, axis)
                : UniformGrid.Fill(rows.Times, grid.Places, axis, grid.Start, grid.Period, options.Interpolation)),
        ];
        int missing = grid.Places[^1] + 1 - rows.Times.Length;
        int gaps = Enumerable.Range(1, rows.Times.Length - 1).Count(i => grid.Places[i] - grid.Places[i - 1] > 1);
        var repair = new RecordRepair(rows.Moved, rows.Dropped, gaps, missing, inPlace ? 0 : rows.Times.Length, grid.Jitter);

        double rate = 1 / grid.Period;
        double relative = Math.Sqrt((clock * clock) + Math.Pow(grid.PeriodUncertainty / grid.Period, 2));
        return new AccelerationRecord(
            [.. uniform.Select(axis => WithoutMean(axis, rate))],
            Measured<Frequency>.FromSi(rate, rate * relative),
            gravity,
            repair,
            RecordInspection.Of(rows, grid, repair, gravity, fullScale));
    }

    /// <summary>The three signals, if the record holds them.</summary>
    /// <param name="x">Along the sensor's x, or null.</param>
    /// <param name="y">Along the sensor's y, or null.</param>
    /// <param name="z">Along the sensor's z, or null.</param>
    /// <returns>Whether there are signals.</returns>
    public bool TryGetSignals(
        [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out SampledSignal? x,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out SampledSignal? y,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out SampledSignal? z)
    {
        x = _signals?[0];
        y = _signals?[1];
        z = _signals?[2];
        return _signals is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The signals and what was repaired, or the finding in their place.</returns>
    public override string ToString() => _signals is null ? _findings[0].ToString() : $"{_signals[0]}, gravity {Gravity}; {Repair}";

    private SampledSignal Signal(int axis) => _signals?[axis] ?? throw new IndeterminateException(_findings[0]);

    /// <summary>Stamps that lie on the grid to a thousandth of a period need no interpolation.</summary>
    private static bool IsUniform(double[] times, SampleClock grid)
    {
        for (int i = 0; i < times.Length; i++)
        {
            if (Math.Abs(times[i] - grid.Start - (grid.Period * grid.Places[i])) > 1e-3 * grid.Period)
            {
                return false;
            }
        }

        return true;
    }

    private static SampledSignal WithoutMean(double[] values, double rate)
    {
        double mean = values.Average();
        return SampledSignal.FromSamples([.. values.Select(value => value - mean)], Frequency.FromHertz(rate));
    }
}
