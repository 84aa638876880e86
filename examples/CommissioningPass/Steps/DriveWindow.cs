using CommissioningPass.Inputs;
using CommissioningPass.Pictures;
using CommissioningPass.Report;
using PrinterMath.Measurement;
using PrinterMath.Tension;
using UnitsNet;

namespace CommissioningPass.Steps;

/// <summary>The tensions that serve the drive of drive.csv, on both spans, and where the belts stand in them.</summary>
internal sealed class DriveWindow
{
    /// <summary>How far inside the owner's limits a target stays, a ratio: more than a tension is uncertain by.</summary>
    private const double Inside = 0.05;

    private readonly DriveReadings _readings;
    private readonly HeardSpan _a;
    private readonly HeardSpan _b;
    private readonly TensionWindow _window;
    private readonly bool _hasRoom;

    internal DriveWindow(DriveReadings readings, HeardSpan a, HeardSpan b, Tolerance<Force> owner)
    {
        _readings = readings;
        _a = a;
        _b = b;
        Drive = BeltDrive.Crossed(readings.Layout, new BeltDriveOptions
        {
            MassX = readings.Optional<Mass>(DriveKind.MassX),
            MassY = readings.Optional<Mass>(DriveKind.MassY),
            Friction = readings.Optional<Force>(DriveKind.Friction),
            BeltWidth = readings.BeltWidth,
            ShaftLoad = readings.Optional<Force>(DriveKind.ShaftLoad),
            IdlerLoad = readings.Optional<Force>(DriveKind.IdlerLoad),
            WorkingStrength = readings.Optional<ForcePerLength>(DriveKind.WorkingStrength),
        });
        _window = Drive.TensionWindow(a.Span, new TensionWindowOptions { Acceleration = readings.Acceleration, SlackSideShare = readings.Optional<double>(DriveKind.SlackSideShare) });
        _hasRoom = _window.TryGetRecommended(out Measured<Force> recommended);
        Target = _hasRoom ? Within(owner, recommended.Value) : null;
        OwnerMoves = Target is { } target && Math.Abs(target.Newtons - recommended.SiValue) > 1e-9;
    }

    internal BeltDrive Drive { get; }

    /// <summary>Tension to aim at: the recommended one, kept inside the owner's limits; null when no tension serves.</summary>
    internal Force? Target { get; }

    internal IEnumerable<Finding> Findings => _window.Findings;

    private bool OwnerMoves { get; }

    internal IReadOnlyList<PassEntry> Entries(BeltComparison comparison, bool leave)
    {
        List<PassEntry> entries =
        [
            PassEntry.Of("tension.window.lower", "Tension at least", _window.Lower.Result, whatToDo: $"slack side, head at {_window.WorstPosition}"),
            PassEntry.Of("tension.window.upper", "Tension at most", _window.Upper.Result, whatToDo: $"limit of the {_window.BindingPlace}"),
            PassEntry.Of("tension.window.a.lower_frequency", "A at the least", _a.Span.FrequencyAt(_window.Lower.Result).Result),
            PassEntry.Of("tension.window.b.lower_frequency", "B at the least", _b.Span.FrequencyAt(_window.Lower.Result).Result),
        ];
        if (_window.TryGetUpperFrequency(out UncertaintyBudget<Frequency>? highest))
        {
            entries.Add(PassEntry.Of("tension.window.a.upper_frequency", "A at the most", highest.Result));
            entries.Add(PassEntry.Of("tension.window.b.upper_frequency", "B at the most", _b.Span.FrequencyAt(_window.Upper.Result).Result));
        }

        if (_hasRoom)
        {
            entries.Add(Judged("a", "A in the window", comparison.FirstTension, leave));
            entries.Add(Judged("b", "B in the window", comparison.SecondTension, leave));
        }

        return entries;
    }

    internal IEnumerable<Conclusion> Conclusions(BeltComparison comparison) =>
        _hasRoom ? [_window.Judge(comparison.FirstTension).Conclusion, _window.Judge(comparison.SecondTension).Conclusion] : [];

    internal IEnumerable<PassSetting> Settings => _hasRoom
        ? [new("tension.window.recommended", _window.Recommended.SiValue, "N"), new("tension.target", Target!.Value.Newtons, "N")]
        : [];

    internal IEnumerable<string> Remarks()
    {
        yield return FormattableString.Invariant(
            $"Each belt transmits {_window.LargestForce.Result} at {_readings.Acceleration.MetersPerSecondSquared:0.##} m/s²; the lower limit is set by the slack side, the upper one by the {_window.BindingPlace}.");
        yield return _hasRoom
            ? FormattableString.Invariant($"Recommended tension {_window.Recommended.SiValue:0.0} N; aimed at: {Target!.Value.Newtons:0.0} N{(OwnerMoves ? ", kept inside the owner's limits of limits.csv" : string.Empty)}.")
            : "No tension is known to serve that acceleration, so the belts are not judged against a window.";
        yield return FormattableString.Invariant(
            $"The lower limit is uncertain mostly by '{_window.Lower.Largest.Input.Name}', {_window.Lower.Largest.VarianceShare * 100:0} % of its variance; the upper one by '{_window.Upper.Largest.Input.Name}', {_window.Upper.Largest.VarianceShare * 100:0} %.");
    }

    internal TensionWindowData Picture(BeltComparison comparison) => new(
        _window.Lower.Result, _window.Upper.Result, _window.BindingPlace, Target, comparison.FirstTension.Value, comparison.SecondTension.Value);

    private PassEntry Judged(string belt, string label, SpanTension tension, bool leave)
    {
        Verdict<Force> verdict = _window.Judge(tension);
        string todo = (leave, verdict.Conclusion) switch
        {
            (true, _) => "leave it",
            (_, Conclusion.Within) => "serves this acceleration",
            (_, Conclusion.Undecided) => $"{verdict.Limitation}",
            _ => verdict.Measured.SiValue < (_window.Lower.Result.SiValue + _window.Upper.Result.SiValue) / 2
                ? "too slack for this acceleration"
                : $"too tight for the {_window.BindingPlace}",
        };
        return PassEntry.Judged(
            $"tension.{belt}.window", label, verdict, whatToDo: todo,
            limitText: FormattableString.Invariant($"{_window.Lower.Result.SiValue:0.0} to {_window.Upper.Result.SiValue:0.0} N"));
    }

    private static Force Within(Tolerance<Force> owner, Force recommended)
    {
        double low = (owner.Lower?.Newtons ?? 0) * (1 + Inside);
        double high = (owner.Upper?.Newtons ?? double.MaxValue) * (1 - Inside);
        double newtons = low <= high ? Math.Clamp(recommended.Newtons, low, high) : (owner.Lower!.Value.Newtons + owner.Upper!.Value.Newtons) / 2;
        return newtons == recommended.Newtons ? recommended : Force.FromNewtons(newtons);
    }
}
