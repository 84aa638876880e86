using System.Text;
using System.Xml;
using System.Xml.Linq;
using CommissioningPass.Inputs;
using PrinterMath.Measurement;

namespace CommissioningPass.Report;

/// <summary>The report for people: one page that holds all it needs and loads nothing. It is well-formed XML, and the same results give the same bytes.</summary>
internal static class HtmlReport
{
    internal static void Write(IReadOnlyList<PassStep> steps, Scenario scenario, string recordName, string path)
    {
        var page = new XDocument(
            new XDocumentType("html", null, null, null!),
            new XElement("html", new XAttribute("lang", "en"), Head(scenario), new XElement("body", Page(steps, scenario, recordName))));
        KeepWhatXmlAllows(page);
        WholeFile.Write(path, stream =>
        {
            var settings = new XmlWriterSettings
            {
                Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
                Indent = true,
                IndentChars = " ",
                NewLineChars = "\n",
                OmitXmlDeclaration = true,
            };
            using (var writer = XmlWriter.Create(stream, settings))
            {
                page.Save(writer);
            }

            stream.Write("\n"u8);
        });
    }

    private static XElement Head(Scenario scenario) => new(
        "head",
        new XElement("meta", new XAttribute("charset", "utf-8")),
        new XElement("meta", new XAttribute("name", "viewport"), new XAttribute("content", "width=device-width, initial-scale=1")),
        new XElement("title", scenario.Heading.Length == 0 ? "Commissioning report" : "Commissioning report: " + scenario.Heading),
        new XElement("style", ReportStyle.Css));

    private static XElement Page(IReadOnlyList<PassStep> steps, Scenario scenario, string recordName) => new(
        "main",
        new XElement(
            "header",
            new XElement("h1", "Commissioning report"),
            scenario.Heading.Length == 0 ? null : new XElement("p", new XAttribute("class", "subject"), scenario.Heading),
            scenario.Paragraph.Length == 0 ? null : new XElement("p", scenario.Paragraph),
            new XElement("p", Summary(steps))),
        NextSteps.Section(steps),
        PassLink.All.Select(link => StepSection.Of(link, steps.FirstOrDefault(step => step.Name == link.Name))),
        new XElement(
            "footer",
            new XElement("p", "A number after ± is a standard uncertainty: about two times in three the true value lies within it. "
                + "A verdict is given only where a limit is. Within or outside: that is at least 95 % sure. Undecided: it is not, and the table says what stands in the way."),
            new XElement("p", $"{recordName} holds the same results for machines, with their 95 % intervals and the numbers to set.")));

    private static string Summary(IReadOnlyList<PassStep> steps)
    {
        ILookup<Conclusion, PassEntry> judged = steps.SelectMany(step => step.Entries).Where(entry => entry.Verdict is not null).ToLookup(entry => entry.Verdict!.Conclusion);
        return $"{judged.Sum(group => group.Count())} results were judged against a limit: {judged[Conclusion.Within].Count()} within, {judged[Conclusion.Outside].Count()} outside{Names(judged[Conclusion.Outside])}, {judged[Conclusion.Undecided].Count()} undecided{Names(judged[Conclusion.Undecided])}.";
    }

    private static string Names(IEnumerable<PassEntry> entries) =>
        string.Join(", ", entries.Select(entry => Spelling.Of(entry.Label))) is { Length: > 0 } names ? $" ({names})" : string.Empty;

    /// <summary>Texts come from files; a character that XML cannot hold becomes the sign for one that is missing.</summary>
    private static void KeepWhatXmlAllows(XDocument page)
    {
        foreach (XText text in page.DescendantNodes().OfType<XText>())
        {
            text.Value = Allowed(text.Value);
        }

        foreach (XAttribute attribute in page.Descendants().Attributes())
        {
            attribute.Value = Allowed(attribute.Value);
        }
    }

    private static string Allowed(string text)
    {
        var kept = new StringBuilder(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            kept.Append(rune.Value > char.MaxValue || XmlConvert.IsXmlChar((char)rune.Value) ? rune.ToString() : "\uFFFD");
        }

        return kept.ToString();
    }
}
