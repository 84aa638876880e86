using CommissioningPass.Inputs;
using CommissioningPass.Report;
using PrinterMath.Measurement;
using PrinterMath.Tension;
using UnitsNet;

namespace CommissioningPass.Steps;

/// <summary>What to turn on each tensioner of drive.csv so that both belts end at the target.</summary>
internal sealed class DriveTurns
{
    private readonly List<string> _remarks = [];
    private readonly PairBalance? _balance;
    private readonly TensionerTurn? _a;
    private readonly TensionerTurn? _b;
    private readonly Tolerance<double> _difference;

    internal DriveTurns(DriveReadings readings, HeardSpan a, HeardSpan b, Force target, Tolerance<double> difference)
    {
        _difference = difference;
        Tensioner? first = Of(readings, a, readings.Layout.BeltA, DriveKind.TurnsA, DriveKind.BeforeA);
        Tensioner? second = Of(readings, b, readings.Layout.BeltB, DriveKind.TurnsB, DriveKind.BeforeB);
        if (first is not null && second is not null)
        {
            _balance = TensionerPair.Uncoupled(a.Span, b.Span, first, second).Balance(a.Frequency, b.Frequency, target);
            (_a, _b) = (_balance.TurnA, _balance.TurnB);
            return;
        }

        _a = first?.Toward(target, a.Span.TensionFor(a.Frequency).Value, "belt A");
        _b = second?.Toward(target, b.Span.TensionFor(b.Frequency).Value, "belt B");
    }

    internal IReadOnlyList<string> Remarks => _remarks;

    internal IEnumerable<PassEntry> Entries
    {
        get
        {
            foreach ((string belt, TensionerTurn? turn) in new[] { ("a", _a), ("b", _b) })
            {
                if (turn is not null)
                {
                    yield return PassEntry.Of($"tension.{belt}.turns", $"Turns on {belt.ToUpperInvariant()}", turn.Turns.Result, whatToDo: turn.ToString());
                }
            }

            if (_balance is not null)
            {
                yield return PassEntry.Judged("tension.predicted_difference", "Difference then", _difference.Judge(_balance.PredictedDifference), "%", "after the turns to make now");
            }
        }
    }

    internal IEnumerable<PassSetting> Settings => new[] { ("a", _a), ("b", _b) }
        .Where(item => item.Item2 is not null)
        .Select(item => new PassSetting($"tension.{item.Item1}.turns_now", item.Item2!.Now, "1"));

    /// <summary>What to do to one belt, in a sentence: turns where they are known, else the pitch alone.</summary>
    internal string Sentence(BeltChange change) => (change.Name == "A" ? _a : _b) is { Sense: not TurnSense.Leave } turn
        ? $"{turn}; belt {change.Name} is to end at {change.TargetFrequency}."
        : change.ToString();

    private Tensioner? Of(DriveReadings readings, HeardSpan belt, BeltPath path, DriveKind turns, DriveKind before)
    {
        if (readings.Holds(turns))
        {
            try
            {
                var learned = Tensioner.FromReadings(belt.Span, readings.Of<Frequency>(before), belt.Frequency, readings.Of<double>(turns));
                _remarks.Add($"Tensioner {belt.Name}: {learned}, learned from its last turn.");
                return learned;
            }
            catch (IndeterminateException unclear)
            {
                _remarks.Add($"Tensioner {belt.Name}: the last turn does not tell its gain. {unclear.Message}");
            }
        }

        if (!readings.Holds(DriveKind.TensionerLead))
        {
            _remarks.Add($"Turns on belt {belt.Name} are not given: drive.csv needs tensioner_lead and tensioner_strands, or the last turn and the frequency before it.");
            return null;
        }

        var drawn = Tensioner.FromStiffness(
            Measured.Exact(readings.LengthOf(DriveKind.TensionerLead)),
            (int)readings.Si(DriveKind.TensionerStrands),
            Measured.Exact(path.TotalLength(readings.Layout.Travel.Middle)),
            readings.BeltWidth,
            readings.Optional<ForcePerLength>(DriveKind.BeltStiffness));
        _remarks.Add($"Tensioner {belt.Name}: {drawn}, from the belt's stiffness; a frame that gives makes it less.");
        return drawn;
    }
}
