using CommissioningPass.Inputs;
using CommissioningPass.Pictures;
using CommissioningPass.Report;
using PrinterMath.Measurement;
using PrinterMath.Tension;

namespace CommissioningPass.Steps;

/// <summary>What drive.csv adds to the first link: window, turns, motors, axes.</summary>
internal sealed class DriveAnswers
{
    private readonly DriveWindow _window;
    private readonly DriveTurns? _turns;
    private readonly DriveMotion _motion;
    private readonly BeltComparison _comparison;
    private readonly bool _leave;

    internal DriveAnswers(DriveReadings readings, DriveWindow window, BeltComparison comparison, HeardSpan a, HeardSpan b, Limits limits, bool leave)
    {
        _window = window;
        _comparison = comparison;
        _leave = leave;
        _turns = !leave && window.Target is { } target ? new DriveTurns(readings, a, b, target, limits.BeltTensionDifference) : null;
        _motion = new DriveMotion(readings, window.Drive, leave ? null : window.Target);
    }

    internal IEnumerable<PassEntry> Entries => [.. _window.Entries(_comparison, _leave), .. _turns?.Entries ?? [], .. _motion.Entries(_comparison)];

    internal IEnumerable<PassSetting> Settings => [.. _window.Settings, .. _turns?.Settings ?? []];

    internal IEnumerable<(string About, Finding Finding)> Findings => _window.Findings.Concat(_motion.Findings).Select(finding => (DriveReadings.File, finding));

    internal IEnumerable<string> Remarks => [.. _window.Remarks(), .. _turns?.Remarks ?? [], .. _motion.Remarks()];

    internal PictureData Picture => _window.Picture(_comparison);

    internal string Sentence(BeltChange change) => _turns?.Sentence(change) ?? change.ToString();
}
