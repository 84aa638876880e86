using System.Xml.Linq;
using CommissioningPass.Pictures;
using PrinterMath.Measurement;

namespace CommissioningPass.Report;

/// <summary>One step of the report: its results, its pictures, and what was noticed.</summary>
internal static class StepSection
{
    private static readonly string[] Columns = ["Quantity", "Value", "Limit", "Verdict", "What limits it, what to do"];

    internal static XElement Of(PassLink link, PassStep? step) => new(
        "section",
        new XAttribute("id", link.Name),
        new XElement("h2", link.Title),
        step is null ? new XElement("p", link.Missing) : Content(step));

    private static IEnumerable<XElement> Content(PassStep step)
    {
        yield return new XElement(
            "table",
            new XElement("thead", new XElement("tr", Columns.Select(column => new XElement("th", new XAttribute("scope", "col"), column)))),
            new XElement("tbody", step.Entries.Select(Row)));
        if (step.Pictures.Count > 0)
        {
            yield return new XElement("div", new XAttribute("class", "figures"), step.Pictures.Select(data => Picture(Drawing.Of(data))));
        }

        if (step.Findings.Count + step.Remarks.Count + step.WouldAdd.Count > 0)
        {
            yield return new XElement("h3", "What was noticed");
            yield return new XElement(
                "ul",
                step.Findings.Select(item => new XElement("li", Spelling.Sentence($"{Severity(item.Finding)} {item.About}: {item.Finding.Message}"))),
                step.Remarks.Concat(step.WouldAdd).Select(remark => new XElement("li", Spelling.Of(remark))));
        }

        yield return new XElement("h3", "Take care");
        yield return new XElement("ul", step.Cautions.Select(caution => new XElement("li", new XAttribute("class", "caution"), "⚠ " + caution)));
    }

    private static XElement Row(PassEntry entry) => new(
        "tr",
        new XElement("th", new XAttribute("scope", "row"), Spelling.Of(entry.Label)),
        Cell(1, "value", Spelling.Of(entry.Text)),
        Cell(2, "limit", Spelling.Of(entry.LimitText ?? string.Empty)),
        Cell(3, "judged", entry.Verdict is null ? string.Empty : Verdict(entry.Verdict)),
        Cell(4, "advice", Spelling.Of(Advice(entry))));

    private static XElement Cell(int column, string kind, object content) => new(
        "td", new XAttribute("class", kind), new XAttribute("data-label", Columns[column]), content);

    private static XElement Verdict(IVerdict verdict)
    {
        (string word, string sign) = verdict.Conclusion switch
        {
            Conclusion.Within => ("within", "✓"),
            Conclusion.Outside => ("outside", "✗"),
            _ => ("undecided", "?"),
        };
        return new XElement("span", new XAttribute("class", "verdict " + word), new XElement("span", new XAttribute("class", "sign"), sign), word);
    }

    /// <summary>Steps mostly name what limits a verdict in what to do; where they do not, it goes first.</summary>
    private static string Advice(PassEntry entry)
    {
        string todo = entry.WhatToDo ?? string.Empty;
        string? limitation = entry.Verdict?.Limitation?.ToString();
        return limitation is null || todo.Contains(limitation, StringComparison.Ordinal)
            ? todo
            : todo.Length == 0 ? limitation : $"{limitation}; {todo}";
    }

    private static XElement Picture(Figure figure) => new("figure", figure.Svg, new XElement("figcaption", figure.Caption));

    private static string Severity(Finding finding) => finding.Severity switch
    {
        FindingSeverity.Note => "Note on",
        FindingSeverity.Caution => "Look into",
        _ => "Not known from",
    };
}
