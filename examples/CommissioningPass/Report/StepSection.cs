using System.Xml.Linq;
using CommissioningPass.Pictures;
using PrinterMath.Measurement;

namespace CommissioningPass.Report;

/// <summary>One step of the report: its results, its pictures, and what was noticed.</summary>
internal static class StepSection
{
    /// <summary>Heading of a column, its short form for a phone, and what an entry has there.</summary>
    private static readonly (string Heading, string Short, Func<PassEntry, object> Of)[] Columns =
    [
        ("Value", "Value", entry => Spelling.Of(entry.Text)),
        ("Limit", "Limit", entry => Spelling.Of(entry.LimitText ?? string.Empty)),
        ("Verdict", "Verdict", entry => entry.Verdict is null ? string.Empty : Verdict(entry.Verdict)),
        ("What limits it, what to do", "Advice", entry => Spelling.Running(Advice(entry))),
    ];

    internal static XElement Of(PassLink link, PassStep? step) => new(
        "section",
        new XAttribute("id", link.Name),
        new XElement("h2", link.Title),
        step is null ? new XElement("p", link.Missing) : Content(step));

    private static IEnumerable<XElement> Content(PassStep step)
    {
        yield return Table(step.Entries);
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
                step.Remarks.Concat(step.WouldAdd).Select(remark => new XElement("li", Spelling.Running(remark))));
        }

        yield return new XElement("h3", "Take care");
        yield return new XElement("ul", step.Cautions.Select(caution => new XElement("li", new XAttribute("class", "caution"), "⚠ " + caution)));
    }

    /// <summary>A column that no entry fills is left out.</summary>
    private static XElement Table(IReadOnlyList<PassEntry> entries)
    {
        (string Heading, string Short, Func<PassEntry, object> Of)[] columns = [.. Columns.Where(column => entries.Any(entry => column.Of(entry) is not ""))];
        return new XElement(
            "table",
            new XElement("thead", new XElement("tr", columns.Select(column => column.Heading).Prepend("Quantity").Select(heading => new XElement("th", new XAttribute("scope", "col"), heading)))),
            new XElement("tbody", entries.Select(entry => new XElement(
                "tr",
                new XElement("th", new XAttribute("scope", "row"), Spelling.Minus(entry.Label)),
                columns.Select(column => new XElement("td", new XAttribute("data-label", column.Short), column.Of(entry)))))));
    }

    private static XElement Verdict(IVerdict verdict)
    {
        (string word, string sign) = verdict.Conclusion switch
        {
            Conclusion.Within => ("within", "✓"),
            Conclusion.Outside => ("outside", "✗"),
            _ => ("undecided", "?"),
        };
        return new XElement("span", new XAttribute("class", "verdict " + word), new XElement("span", new XAttribute("class", "sign"), sign), " " + word);
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

    private static XElement Picture(Figure figure) => new("figure", figure.Svg, new XElement("figcaption", Spelling.Running(figure.Caption)));

    private static string Severity(Finding finding) => finding.Severity switch
    {
        FindingSeverity.Note => "Note on",
        FindingSeverity.Caution => "Look into",
        _ => "Not known from",
    };
}
