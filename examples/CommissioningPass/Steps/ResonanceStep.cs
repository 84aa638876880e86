using CommissioningPass.Inputs;
using CommissioningPass.Report;
using PrinterMath.Resonance;
using UnitsNet;

namespace CommissioningPass.Steps;

/// <summary>Fourth link: how the tapped head rings along x and y, and which impulse sequence keeps a move from ringing it.</summary>
internal static class ResonanceStep
{
    /// <summary>The blow is over this long after its largest acceleration.</summary>
    private const double AfterTheBlow = 0.01;

    private const double ShortestDecay = 0.1;

    private static readonly string[] Cautions =
    [
        "Motors that hold the head may start: keep fingers, hair and the sensor's cable out of the way of head and belts.",
        "Raise acceleration in small steps and stay at the power switch; the drive's and the maker's limits come first.",
    ];

    internal static PassStep Take(AccelerationRecord record, Limits limits)
    {
        Duration start = DecayStart(record);
        RingingAxis x = RingingAxis.Of("x", record.X, start, record.RelativeRateUncertainty, limits.RingingResidual);
        RingingAxis y = RingingAxis.Of("y", record.Y, start, record.RelativeRateUncertainty, limits.RingingResidual);
        return new PassStep(
            "resonance",
            "4. Resonance",
            [.. x.Entries, .. y.Entries],
            [
                .. record.Findings.Select(finding => (TapRecording.File, finding)),
                .. x.Findings.Select(finding => ("x", finding)),
                .. y.Findings.Select(finding => ("y", finding)),
            ],
            [
                FormattableString.Invariant($"The decay is read from {start.Seconds:0.000} s after the first sample on, {AfterTheBlow * 1e3:0} ms after the largest acceleration."),
                .. x.Remarks(limits.PathDeviation),
                .. y.Remarks(limits.PathDeviation),
                "Modes move with the place of the head and its load, which the uncertainties do not hold: tap at other places too.",
            ],
            Cautions)
        {
            Settings = [.. x.Settings(limits.PathDeviation), .. y.Settings(limits.PathDeviation)],
        };
    }

    private static Duration DecayStart(AccelerationRecord record)
    {
        ReadOnlySpan<double> x = record.X.Samples;
        ReadOnlySpan<double> y = record.Y.Samples;
        int blow = 0;
        for (int i = 1; i < x.Length; i++)
        {
            blow = (x[i] * x[i]) + (y[i] * y[i]) > (x[blow] * x[blow]) + (y[blow] * y[blow]) ? i : blow;
        }

        double rate = record.X.SampleRateHertz;
        double start = (blow / rate) + AfterTheBlow;
        return (x.Length / rate) - start >= ShortestDecay
            ? Duration.FromSeconds(start)
            : throw new InputException(TapRecording.File, null, FormattableString.Invariant(
                $"the largest acceleration comes {(x.Length - blow) / rate:0.000} s before the end; at least {AfterTheBlow + ShortestDecay:0.00} s of decay are needed after the tap."));
    }
}
