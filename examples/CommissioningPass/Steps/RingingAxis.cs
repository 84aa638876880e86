using System.Globalization;
using CommissioningPass.Pictures;
using CommissioningPass.Report;
using PrinterMath.Measurement;
using PrinterMath.Resonance;
using UnitsNet;

namespace CommissioningPass.Steps;

/// <summary>One axis that rang down after the tap: its modes, the largest swing first, and the sequence chosen for them.</summary>
internal sealed class RingingAxis
{
    /// <summary>A mode that swings less than this share of the largest is left out of the choice.</summary>
    private const double WorthShaping = 0.1;

    /// <summary>Hertz; finer than the width of a damped mode.</summary>
    private const double PictureResolution = 2;

    /// <summary>Sensors drift below this; a head on belts rings far above it.</summary>
    private static readonly Frequency BelowIsDrift = Frequency.FromHertz(5);

    private readonly string _axis;
    private readonly ModeSet _found;
    private readonly Mode[] _modes;
    private readonly Mode[] _small;
    private readonly SequenceChoice? _choice;
    private readonly double? _acceptableResidual;

    private RingingAxis(string axis, ModeSet found, double? acceptableResidual)
    {
        _axis = axis;
        _found = found;
        _acceptableResidual = acceptableResidual;
        _modes = [.. found.Modes.OrderByDescending(Swing)];
        _small = [.. _modes.Where(mode => Swing(mode) < WorthShaping * Swing(_modes[0]))];
        _choice = _modes.Length > 0
            ? SequenceSearch.For([.. _modes.Except(_small)], new SequenceLimits { AcceptableResidual = acceptableResidual })
            : null;
    }

    internal string Name => _axis;

    internal IEnumerable<Finding> Findings => [.. _found.Findings, .. _choice?.Findings ?? []];

    internal IEnumerable<PassEntry> Entries => _modes.SelectMany((mode, i) => new[]
    {
        PassEntry.Of(Invariant($"resonance.{_axis}.mode_{i + 1}.frequency"), Invariant($"{_axis}, mode {i + 1}"), mode.Frequency),
        PassEntry.Of(Invariant($"resonance.{_axis}.mode_{i + 1}.damping_ratio"), Invariant($"{_axis}, damping {i + 1}"), mode.DampingRatio, "%"),
    });

    internal static RingingAxis Of(string axis, SampledSignal signal, Duration start, double clock, double? acceptableResidual) =>
        new(axis, RingDown.Fit(signal, new RingDownOptions { Start = start, LowestFrequency = BelowIsDrift, RelativeClockUncertainty = clock }), acceptableResidual);

    internal IEnumerable<string> Remarks(Length? deviation)
    {
        foreach (Mode mode in _small)
        {
            yield return Invariant($"{_axis}: the mode at {mode.Frequency} swings {Swing(mode) / Swing(_modes[0]) * 100:0} % as far as the largest and is left out of the choice.");
        }

        if (_choice?.TryGetPick(out SequenceCandidate? pick) == true)
        {
            yield return $"{_axis}: {_choice.Reason}";
            double[] times = pick.Sequence.Times.ToArray();
            double[] amplitudes = pick.Sequence.Amplitudes.ToArray();
            yield return $"{_axis}: impulses {string.Join(", ", times.Select((time, i) => Invariant($"{amplitudes[i]:0.0000} at {time * 1e3:0.000} ms")))}.";
            if (deviation is { } allowed)
            {
                yield return Invariant(
                    $"{_axis}: up to {AllowedAcceleration.ForDeviation(pick.Sequence, allowed).MetersPerSecondSquared:0.00} m/s² this sequence rounds the path by no more than {allowed.Millimeters:G3} mm; what the drive can do is another limit.");
            }
        }
    }

    internal IEnumerable<PassSetting> Settings(Length? deviation)
    {
        if (_choice?.TryGetPick(out SequenceCandidate? pick) != true)
        {
            yield break;
        }

        double[] times = pick!.Sequence.Times.ToArray();
        double[] amplitudes = pick.Sequence.Amplitudes.ToArray();
        for (int i = 0; i < times.Length; i++)
        {
            yield return new PassSetting(Invariant($"resonance.{_axis}.impulse_{i + 1}.time"), times[i], "s");
            yield return new PassSetting(Invariant($"resonance.{_axis}.impulse_{i + 1}.amplitude"), amplitudes[i], "1");
        }

        yield return new PassSetting($"resonance.{_axis}.worst_residual", pick.WorstResidual, "1");
        if (deviation is { } allowed)
        {
            yield return new PassSetting($"resonance.{_axis}.acceleration", AllowedAcceleration.ForDeviation(pick.Sequence, allowed).MetersPerSecondSquared, "m/s2");
        }
    }

    internal IEnumerable<string> ToDo(Length? deviation)
    {
        if (_choice?.TryGetPick(out SequenceCandidate? pick) == true)
        {
            string limit = deviation is { } allowed
                ? Invariant($", and an acceleration of no more than {AllowedAcceleration.ForDeviation(pick.Sequence, allowed).MetersPerSecondSquared:0.0} m/s²")
                : string.Empty;
            yield return Invariant($"Axis {_axis}: set the sequence of {pick.Sequence.Count} impulses that step 4 lists{limit}.");
        }
    }

    /// <summary>The spectrum of the decay and, beside it, what the chosen sequence leaves.</summary>
    internal IEnumerable<PictureData> Pictures(SampledSignal signal, Duration start, bool unitKnown)
    {
        var spectrum = SpectrumCurve.Of(signal, start, PictureResolution);
        ModeMark[] marks = [.. _modes.Select((mode, i) => new ModeMark(i + 1, mode, _small.Contains(mode)))];
        yield return new SpectrumData(_axis, spectrum, unitKnown ? "(m/s²)² per Hz" : "(sensor's unit)² per Hz", marks);
        if (_choice?.TryGetPick(out SequenceCandidate? pick) == true)
        {
            yield return new ResidualData(_axis, pick, marks, _acceptableResidual, SpectrumData.HighestHertz(spectrum, marks));
        }
    }

    /// <summary>Displacement amplitude up to a common factor: acceleration over the square of frequency. It is what a print shows.</summary>
    private static double Swing(Mode mode) => mode.Amplitude.Value / Math.Pow(mode.Frequency.Value.Hertz, 2);

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
