using System.Globalization;
using System.Text.Json;
using System.Xml;
using System.Xml.Linq;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>The report for people: one well-formed page that loads nothing, holds every result, and shows what the steps drew.</summary>
public sealed class HtmlReportTests
{
    private const string Hostile = "<script>alert(\"1\")</script> & 'left'";

    private static readonly string[] Loads = ["http", "src=", "href", "url(", "@import", "<script", "<img", "<link", "<iframe"];

    /// <summary>How the label of each kind of picture begins.</summary>
    private static readonly string[] Kinds =
        ["Spectrum of belt-a.wav", "Spectrum of belt-b.wav", "Tension window from", "Plan of the bed", "Height map of the bed", "Power spectral density of axis x", "Vibration that the sequence for axis x leaves", "12 pairs"];

    private static readonly Dictionary<string, double> PerSi = new()
    {
        ["N"] = 1,
        ["Hz"] = 1,
        ["g/m"] = 1e-3,
        ["%"] = 1e-2,
        ["mm"] = 1e-3,
        ["mrad"] = 1e-3,
        ["N·m"] = 1,
        ["m/s²"] = 1,
        ["°"] = Math.PI / 180,
        [""] = 1,
    };

    [Theory]
    [InlineData("demo")]
    [InlineData("measured")]
    public void ItIsOnePageThatLoadsNothing(string data)
    {
        string page = Page(data);
        Assert.StartsWith("<!DOCTYPE html", page, StringComparison.Ordinal);
        Assert.Equal("html", Parse(page).Name.LocalName);
        Assert.All(Loads, load => Assert.DoesNotContain(load, page, StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData("demo")]
    [InlineData("measured")]
    public void EveryPictureIsToldInWordsWithNumbers(string data)
    {
        XElement[] figures = [.. Parse(Page(data)).Descendants("figure")];
        Assert.NotEmpty(figures);
        Assert.All(figures, figure =>
        {
            XElement svg = Assert.Single(figure.Elements("svg"));
            Assert.Equal("img", (string?)svg.Attribute("role"));
            Assert.Contains((string)svg.Attribute("aria-label")!, char.IsDigit);
            Assert.NotEmpty(Assert.Single(figure.Elements("figcaption")).Value);
        });
        Assert.Equal(figures.Length, Parse(Page(data)).Descendants("svg").Count());
    }

    /// <summary>A phone shows the 360 units in 366 pixels; 6 units a letter is what a plain sans-serif of size 12 takes on average.</summary>
    [Theory]
    [InlineData("demo")]
    [InlineData("measured")]
    public void TextInPicturesIsLargeEnoughForAPhoneAndNotCutOff(string data)
    {
        foreach (XElement svg in Parse(Page(data)).Descendants("svg"))
        {
            Assert.StartsWith("0 0 360 ", (string)svg.Attribute("viewBox")!, StringComparison.Ordinal);
            Assert.Equal("12", (string?)svg.Attribute("font-size"));
            Assert.DoesNotContain(svg.Elements(), shape => shape.Attribute("font-size") is not null);
            Assert.All(svg.Elements("text"), text =>
            {
                double width = 6 * text.Value.Length;
                double left = Number(text, "x") - ((string?)text.Attribute("text-anchor") switch { "middle" => width / 2, "end" => width, _ => 0 });
                Assert.True(left >= 0 && left + width <= 360, text.ToString());
            });
        }
    }

    [Fact]
    public void TheDemonstrationHasEveryKindOfPicture()
    {
        string[] labels = [.. Parse(Page("demo")).Descendants("svg").Select(svg => (string)svg.Attribute("aria-label")!)];
        Assert.All(Kinds, kind => Assert.Contains(labels, label => label.StartsWith(kind, StringComparison.Ordinal)));
    }

    /// <summary>Row by row against the record, in its SI: no more is lost than half a unit of the last digit shown.</summary>
    [Theory]
    [InlineData("demo")]
    [InlineData("measured")]
    public void EveryEntryOfTheRecordStandsInATable(string data)
    {
        using var folder = new PassFolder(data);
        Assert.Equal(0, folder.Run().ExitCode);
        XElement page = Parse(File.ReadAllText(folder.Report));
        using JsonDocument record = JsonDocument.Parse(File.ReadAllText(folder.Record));
        foreach (JsonElement step in record.RootElement.GetProperty("steps").EnumerateArray())
        {
            XElement section = page.Descendants("section").Single(section => (string?)section.Attribute("id") == step.GetProperty("name").GetString());
            XElement[] rows = [.. section.Descendants("tbody").Single().Elements("tr")];
            JsonElement[] entries = [.. step.GetProperty("entries").EnumerateArray()];
            Assert.Equal(entries.Length, rows.Length);
            for (int i = 0; i < rows.Length; i++)
            {
                CheckRow(rows[i], entries[i]);
            }
        }
    }

    [Fact]
    public void TwoRunsGiveTheSameBytes()
    {
        using var folder = new PassFolder();
        folder.Run();
        byte[] first = File.ReadAllBytes(folder.Report);
        folder.Run();
        Assert.Equal(first, File.ReadAllBytes(folder.Report));
    }

    [Fact]
    public void TextFromFilesStaysText()
    {
        using var folder = new PassFolder();
        string quoted = "\"" + Hostile.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
        folder.Change("screws.csv", "front left", quoted);
        folder.Change("turned.csv", "front left", quoted);
        File.WriteAllText(folder.PathOf("README.md"), "# <img src=x onerror=alert(1)>\n\nA bell \u0007 and ]]> and -->.\n");
        (int exitCode, _, string error) = folder.Run();
        Assert.True(exitCode == 0, error);
        string page = File.ReadAllText(folder.Report);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", page, StringComparison.OrdinalIgnoreCase);
        XElement parsed = Parse(page);
        Assert.Contains(parsed.Descendants("th"), cell => cell.Value == Hostile + ": turn");
        Assert.Contains(parsed.Descendants("svg"), svg => ((string)svg.Attribute("aria-label")!).Contains(Hostile, StringComparison.Ordinal));
        Assert.Contains(parsed.Descendants("p"), text => text.Value == "A bell \uFFFD and ]]> and -->.");
    }

    [Theory]
    [InlineData("tension", "drive.csv", "drive.csv")]
    [InlineData("resonance", "acceleration.csv", "acceleration.csv")]
    [InlineData("extrusion", "walls.csv", "walls.csv")]
    [InlineData("extrusion", "fit.csv", "fit.csv")]
    [InlineData("extrusion", "walls.csv", "walls.csv", "fit.csv")]
    public void AStepSaysWhichFileWouldAddToIt(string step, string named, params string[] missing)
    {
        using var folder = new PassFolder();
        Assert.All(missing, file => File.Delete(folder.PathOf(file)));
        Assert.Equal(0, folder.Run().ExitCode);
        XElement section = Parse(File.ReadAllText(folder.Report)).Descendants("section").Single(section => (string?)section.Attribute("id") == step);
        Assert.Contains(section.Descendants(), text => text.Value.Contains(named, StringComparison.Ordinal) && text.Value.Contains("would add", StringComparison.Ordinal));
    }

    [Fact]
    public void AFolderWithoutAReadmeHasAReport()
    {
        using var folder = new PassFolder();
        File.Delete(folder.PathOf("README.md"));
        Assert.Equal(0, folder.Run().ExitCode);
        Assert.Equal("Commissioning report", Parse(File.ReadAllText(folder.Report)).Descendants("h1").Single().Value);
    }

    [Fact]
    public void TheRecordMayNotTakeTheReportsName()
    {
        using var folder = new PassFolder();
        Assert.Equal(2, PassFolder.Run(folder.Root, "--output", folder.Report).ExitCode);
        Assert.False(File.Exists(folder.Report));
    }

    private static string Page(string data)
    {
        using var folder = new PassFolder(data);
        (int exitCode, _, string error) = folder.Run();
        Assert.True(exitCode == 0, error);
        return File.ReadAllText(folder.Report);
    }

    private static XElement Parse(string page)
    {
        using var reader = XmlReader.Create(new StringReader(page), new XmlReaderSettings { DtdProcessing = DtdProcessing.Parse, XmlResolver = null });
        return XDocument.Load(reader).Root!;
    }

    private static double Number(XElement element, string attribute) => double.Parse((string)element.Attribute(attribute)!, CultureInfo.InvariantCulture);

    private static void CheckRow(XElement row, JsonElement entry)
    {
        string shown = Cell(row, "Value");
        string[] parts = shown.Replace("°", " °", StringComparison.Ordinal).Replace('−', '-').Split(' ');
        Assert.Equal("±", parts[1]);
        double unit = PerSi[parts.Length > 3 ? parts[3] : string.Empty];
        int point = parts[0].IndexOf('.', StringComparison.Ordinal);
        double half = 0.5000001 * unit * Math.Pow(10, point < 0 ? 0 : point + 1 - parts[0].Length);
        Assert.Equal(entry.GetProperty("value").GetDouble(), unit * double.Parse(parts[0], CultureInfo.InvariantCulture), half);
        Assert.Equal(entry.GetProperty("standardUncertainty").GetDouble(), unit * double.Parse(parts[2], CultureInfo.InvariantCulture), half);
        JsonElement verdict = entry.GetProperty("verdict");
        string expected = verdict.ValueKind == JsonValueKind.Null ? string.Empty : verdict.GetProperty("conclusion").GetString()!;
        Assert.EndsWith(expected, Cell(row, "Verdict"), StringComparison.Ordinal);
        Assert.Equal(expected.Length > 0, Cell(row, "Limit").Length > 0);
        string? limitation = expected == "undecided" ? verdict.GetProperty("limitation").GetString() : null;
        Assert.Contains(limitation ?? string.Empty, Cell(row, "Advice").Replace('\u00A0', ' '), StringComparison.Ordinal);
    }

    private static string Cell(XElement row, string label) => row.Elements("td").FirstOrDefault(cell => (string?)cell.Attribute("data-label") == label)?.Value.Trim() ?? string.Empty;
}
