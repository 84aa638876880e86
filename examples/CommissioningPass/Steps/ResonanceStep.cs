using CommissioningPass.Inputs;
using CommissioningPass.Report;
using UnitsNet;

namespace CommissioningPass.Steps;

/// <summary>Fourth link: how the tapped head rings along each axis recorded, and which impulse sequence keeps a move from ringing it.</summary>
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

    internal static PassStep Take(TapRecording record, Limits limits)
    {
        Duration start = DecayStart(record);
        RingingAxis[] axes = [.. record.Axes.Select(axis => RingingAxis.Of(axis.Name, axis.Signal, start, record.RelativeRateUncertainty, limits.RingingResidual))];
        return new PassStep(
            "resonance",
            "4. Resonance",
            [.. axes.SelectMany(axis => axis.Entries)],
            [
                .. record.Findings.Select(finding => (TapRecording.File, finding)),
                .. axes.SelectMany(axis => axis.Findings.Select(finding => (axis.Name, finding))),
            ],
            [
                FormattableString.Invariant($"The decay is read from {start.Seconds:0.000} s after the first sample on, {AfterTheBlow * 1e3:0} ms after the largest acceleration."),
                .. axes.SelectMany(axis => axis.Remarks(limits.PathDeviation)),
                "Modes move with the place of the head and its load, which the uncertainties do not hold: tap at other places too.",
            ],
            Cautions)
        {
            Settings = [.. axes.SelectMany(axis => axis.Settings(limits.PathDeviation))],
            ToDo = [.. axes.SelectMany(axis => axis.ToDo(limits.PathDeviation))],
            Pictures = [.. axes.SelectMany((axis, i) => axis.Pictures(record.Axes[i].Signal, start, record.UnitKnown))],
        };
    }

    private static Duration DecayStart(TapRecording record)
    {
        int count = record.Axes[0].Signal.Count;
        int blow = Enumerable.Range(0, count).MaxBy(i => record.Axes.Sum(axis => axis.Signal.Samples[i] * axis.Signal.Samples[i]));
        double rate = record.Axes[0].Signal.SampleRateHertz;
        double start = (blow / rate) + AfterTheBlow;
        return (count / rate) - start >= ShortestDecay
            ? Duration.FromSeconds(start)
            : throw new InputException(TapRecording.File, null, FormattableString.Invariant(
                $"the largest acceleration comes {(count - blow) / rate:0.000} s before the end; at least {AfterTheBlow + ShortestDecay:0.00} s of decay are needed after the tap."));
    }
}
