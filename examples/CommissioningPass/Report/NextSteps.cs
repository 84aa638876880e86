using System.Xml.Linq;
using PrinterMath.Measurement;

namespace CommissioningPass.Report;

/// <summary>What the reader does next, step by step, each with its cautions.</summary>
internal static class NextSteps
{
    internal static XElement Section(IReadOnlyList<PassStep> steps) => new(
        "section",
        new XAttribute("class", "next"),
        new XElement("h2", "What to do next"),
        new XElement("p", "In this order, since each step rests on the ones before it; then measure again."),
        steps.Select(Group));

    private static XElement?[] Group(PassStep step)
    {
        XElement[] items =
        [
            .. step.ToDo.Select(text => Item(text)),
            .. step.Entries.Where(entry => entry.Verdict?.Conclusion == Conclusion.Undecided).Select(Undecided),
            .. step.Findings.Where(item => item.Finding.Severity == FindingSeverity.Blocking).Select(item => Item($"Not known from {item.About}: {item.Finding.Message}")),
            .. step.Findings.Where(item => item.Finding.Severity == FindingSeverity.Caution).Select(item => Item($"Look into {item.About}: {item.Finding.Message}")),
            .. step.LeaveAlone.Select(text => Item(text)),
            .. step.ToDo.Count == 0 ? [] : step.Cautions.Select(text => Item("⚠ " + text, "caution")),
        ];
        return items.Length == 0 ? [] : [new XElement("h3", step.Title), new XElement("ul", items)];
    }

    private static XElement Undecided(PassEntry entry) =>
        Item($"Undecided: {entry.Label}, {entry.Text}, limit {entry.LimitText}. What limits it: {entry.Verdict!.Limitation}");

    private static XElement Item(string text, string? kind = null) => new(
        "li", kind is null ? null : new XAttribute("class", kind), Spelling.Sentence(text));
}
