using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>The findings of a circle, in one place so that codes stay unique.</summary>
internal static class CircleFindings
{
    internal static Finding Short(int count) => new(
        "circle.short",
        FindingSeverity.Blocking,
        $"The {count} points lie in one line or one place: no circle goes through them.",
        new FindingNumber("points", count, "1"));

    internal static Finding UncertaintyUnknown() => new(
        "circle.uncertainty.unknown",
        FindingSeverity.Note,
        "Three points always lie on a circle: they say nothing about its uncertainty or its deviation. Take more points.");

    internal static Finding Units(double radius) => new(
        "circle.unit.suspect",
        FindingSeverity.Caution,
        FormattableString.Invariant($"The radius is {radius * 1e3:G3} mm, which no printer draws: are the positions in the unit that was said?"),
        new FindingNumber("radius", radius, "m"));

    internal static Finding Arc(double gap) => new(
        "circle.arc",
        FindingSeverity.Caution,
        FormattableString.Invariant($"The points leave a gap of {gap * 180 / Math.PI:0}° of the circle: centre and radius are poorly known, and the ring may be wider than it looks."),
        new FindingNumber("gap", gap, "rad"));
}
