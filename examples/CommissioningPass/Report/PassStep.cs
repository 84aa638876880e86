using CommissioningPass.Pictures;
using PrinterMath.Measurement;

namespace CommissioningPass.Report;

/// <summary>One link of the pass with its results.</summary>
/// <param name="Name">Stable name for machines.</param>
/// <param name="Title">Heading.</param>
/// <param name="Entries">Results in order.</param>
/// <param name="Findings">What the analyses noticed, with the file or part it is about.</param>
/// <param name="Remarks">What was done to the files beyond reading them.</param>
/// <param name="Cautions">What can hurt a person or the machine.</param>
internal sealed record PassStep(
    string Name,
    string Title,
    IReadOnlyList<PassEntry> Entries,
    IReadOnlyList<(string About, Finding Finding)> Findings,
    IReadOnlyList<string> Remarks,
    IReadOnlyList<string> Cautions)
{
    /// <summary>Numbers chosen for the machine.</summary>
    internal IReadOnlyList<PassSetting> Settings { get; init; } = [];

    /// <summary>What the owner does to the machine next, in sentences.</summary>
    internal IReadOnlyList<string> ToDo { get; init; } = [];

    /// <summary>What is right as it is, in sentences.</summary>
    internal IReadOnlyList<string> LeaveAlone { get; init; } = [];

    /// <summary>Files that are not there and what each would add, in sentences.</summary>
    internal IReadOnlyList<string> WouldAdd { get; init; } = [];

    /// <summary>What the report draws.</summary>
    internal IReadOnlyList<PictureData> Pictures { get; init; } = [];
}
