namespace PrinterMath.Tension;

/// <summary>Where in the travel the two strands of a belt share a load least evenly: share = long strand/(both).</summary>
/// <remarks>With both ends on the carriage the strands act as springs side by side: the tight one takes F·L₂/(L₁ + L₂), the slack one gives up F·L₁/(L₁ + L₂).</remarks>
internal sealed record WorstStrand(double Share, HeadPosition Head)
{
    internal static WorstStrand Of(BeltDrive drive) =>
        drive.Belts.SelectMany(belt => drive.Travel.Grid().Select(head => At(belt, head))).MaxBy(worst => worst.Share)!;

    private static WorstStrand At(BeltPath belt, HeadPosition head)
    {
        double first = belt.FirstStrand(head).Meters;
        double second = belt.SecondStrand(head).Meters;
        return new WorstStrand(Math.Max(first, second) / (first + second), head);
    }
}
