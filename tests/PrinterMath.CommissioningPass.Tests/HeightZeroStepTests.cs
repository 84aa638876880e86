namespace PrinterMath.CommissioningPass.Tests;

/// <summary>What contact.csv and warming.csv add to the second step.</summary>
public sealed class HeightZeroStepTests
{
    [Fact]
    public void HeightZeroIsContactLessGaugePlusGrowth()
    {
        using var folder = new PassFolder();
        IReadOnlyList<RecordEntry> entries = Run(folder);
        double Entry(string name) => entries.Single(entry => entry.Name == "tramming.zero." + name).Value;
        Assert.Equal(Entry("contact") + Entry("growth"), Entry("height"), 1e-12);

        // By hand: 34 mm of 19e-6/K from 21 to 235 °C and 30 mm of 23e-6/K from 21 to 85 °C.
        Assert.Equal((0.034 * 19e-6 * 214) + (0.030 * 23e-6 * 64), Entry("growth"), 1e-12);
    }

    [Fact]
    public void WithoutAGaugeContactIsThatMuchHigher()
    {
        using var folder = new PassFolder();
        double with = Contact(Run(folder));
        string[] readings = File.ReadAllLines(folder.PathOf("readings.csv"));
        string gauge = readings.Single(line => line.StartsWith("gauge_thickness", StringComparison.Ordinal));
        File.WriteAllLines(folder.PathOf("readings.csv"), readings.Where(line => line != gauge));
        Assert.Equal(double.Parse(gauge.Split(',')[1], System.Globalization.CultureInfo.InvariantCulture) / 1000, Contact(Run(folder)) - with, 1e-12);
    }

    [Fact]
    public void TrialsOnOneSideAreAFinding()
    {
        using var folder = new PassFolder();
        File.WriteAllText(folder.PathOf("contact.csv"), "height_mm,outcome\n0.5,clear\n0.4,clear\n0.3,clear\n");
        Assert.DoesNotContain(Run(folder), entry => entry.Name.StartsWith("tramming.zero", StringComparison.Ordinal));
        Assert.Contains("Blocking on contact.csv", folder.Run().Output, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutTheFileTheReportSaysWhatItWouldAdd()
    {
        using var folder = new PassFolder();
        File.Delete(folder.PathOf("contact.csv"));
        Assert.DoesNotContain(Run(folder), entry => entry.Name.StartsWith("tramming.zero", StringComparison.Ordinal));
        Assert.Contains("would add height zero", File.ReadAllText(folder.Report), StringComparison.Ordinal);
    }

    private static double Contact(IReadOnlyList<RecordEntry> entries) => entries.Single(entry => entry.Name == "tramming.zero.contact").Value;

    private static IReadOnlyList<RecordEntry> Run(PassFolder folder)
    {
        (int exitCode, _, string error) = folder.Run();
        Assert.True(exitCode == 0, error);
        return RecordEntry.Read(folder.Record);
    }
}
