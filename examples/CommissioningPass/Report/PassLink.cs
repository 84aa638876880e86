using CommissioningPass.Inputs;

namespace CommissioningPass.Report;

/// <summary>A link of the pass and the files that would make it.</summary>
/// <param name="Name">Stable name for machines, as in <see cref="PassStep"/>.</param>
/// <param name="Title">Heading.</param>
/// <param name="Missing">What to say when the files are not there.</param>
internal sealed record PassLink(string Name, string Title, string Missing)
{
    internal static readonly IReadOnlyList<PassLink> All =
    [
        new("tension", "1. Tension", string.Empty),
        new("tramming", "2. Tramming", string.Empty),
        new("surface", "3. Surface map", string.Empty),
        new("resonance", "4. Resonance", $"This step was not made: {TapRecording.File}, a recording of the tapped head, would add it."),
        new("extrusion", "5. Extrusion", $"This step was not made: {WallReadings.File}, caliper readings of a wall, or {FitReadings.File}, a series of fits, would add it."),
    ];
}
