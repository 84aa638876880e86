using System.Text.Json;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>commissioning.json parses and holds what the tables show.</summary>
public sealed class PassRecordTests
{
    private static readonly string[] Always =
    [
        "tension.linear_density", "tension.a.frequency", "tension.b.frequency", "tension.a.tension", "tension.b.tension",
        "tension.difference", "tension.a.target_frequency", "tension.b.target_frequency",
        "tramming.tilt_about_x", "tramming.tilt_about_y", "tramming.height_spread", "tramming.predicted_spread",
        "surface.offset", "surface.tilt_x", "surface.tilt_y", "surface.bow_x", "surface.bow_y", "surface.twist",
    ];

    private static readonly string[] Judged =
        ["tension.a.tension", "tension.b.tension", "tension.difference", "tension.a.window", "tension.b.window", "tension.predicted_difference", "tension.motor.reserve", "tension.motor.acceleration",
         "tramming.height_spread", "tramming.predicted_spread", "tramming.now.height_spread", "tramming.now.predicted_spread", "surface.flatness"];

    [Theory]
    [InlineData("demo")]
    [InlineData("measured")]
    public void EveryEntryIsWhole(string data)
    {
        using var folder = new PassFolder(data);
        Assert.Equal(0, folder.Run().ExitCode);
        using JsonDocument record = JsonDocument.Parse(File.ReadAllText(folder.Record));
        Assert.Equal(0, record.RootElement.GetProperty("schemaVersion").GetInt32());
        JsonElement[] steps = [.. record.RootElement.GetProperty("steps").EnumerateArray()];
        Assert.Equal(data == "demo" ? ["tension", "tramming", "surface", "resonance", "extrusion"] : ["tension", "tramming", "surface", "resonance"], steps.Select(step => step.GetProperty("name").GetString()));
        JsonElement[] entries = [.. steps.SelectMany(step => step.GetProperty("entries").EnumerateArray())];
        string[] names = [.. entries.Select(entry => entry.GetProperty("name").GetString()!)];
        Assert.Equal(names.Length, names.Distinct().Count());
        Assert.Empty(Always.Except(names));
        Assert.Equal(2 * (File.ReadAllLines(folder.PathOf("screws.csv")).Length - 1), names.Count(name => name.StartsWith("tramming.screw.", StringComparison.Ordinal)));
        Assert.All(entries, CheckEntry);
        Assert.All(steps, step => Assert.NotEmpty(step.GetProperty("cautions").EnumerateArray()));
    }

    [Fact]
    public void WithoutALimitTheFlatnessHasNoVerdict()
    {
        using var folder = new PassFolder();
        folder.Change("limits.csv", "surface_flatness,,0.1,mm\n", string.Empty);
        Assert.Equal(0, folder.Run().ExitCode);
        using JsonDocument record = JsonDocument.Parse(File.ReadAllText(folder.Record));
        JsonElement flatness = record.RootElement.GetProperty("steps").EnumerateArray()
            .SelectMany(step => step.GetProperty("entries").EnumerateArray())
            .Single(entry => entry.GetProperty("name").GetString() == "surface.flatness");
        Assert.Equal(JsonValueKind.Null, flatness.GetProperty("limit").ValueKind);
        Assert.Equal(JsonValueKind.Null, flatness.GetProperty("verdict").ValueKind);
    }

    [Fact]
    public void FewPointsLeaveTheShapeOutWithAFinding()
    {
        using var folder = new PassFolder();
        folder.LeaveOnePass();
        File.WriteAllText(
            folder.PathOf("probe.csv"),
            "x_mm,y_mm,z_mm,standard_uncertainty_mm\n20,20,0,0.01\n200,20,0.1,0.01\n20,200,0.05,0.01\n200,200,0.16,0.01\n");
        (int exitCode, string output, _) = folder.Run();
        Assert.Equal(0, exitCode);
        Assert.Contains("Blocking on probe.csv: 4 points cannot tell", output, StringComparison.Ordinal);
        Assert.Equal(["surface.flatness"], RecordEntry.Read(folder.Record).Select(entry => entry.Name).Where(name => name.StartsWith("surface.", StringComparison.Ordinal)));
    }

    [Fact]
    public void OnlyTheRecordAndTheReportAreLeft()
    {
        using var folder = new PassFolder();
        folder.Run();
        Assert.Equal([folder.Report, folder.Record], Directory.GetFiles(Path.GetDirectoryName(folder.Record)!).Order(StringComparer.Ordinal));
    }

    private static void CheckEntry(JsonElement entry)
    {
        double value = entry.GetProperty("value").GetDouble();
        Assert.True(entry.GetProperty("standardUncertainty").GetDouble() > 0);
        Assert.NotEmpty(entry.GetProperty("unit").GetString()!);
        Assert.True(entry.GetProperty("degreesOfFreedom").ValueKind is JsonValueKind.Null or JsonValueKind.Number);
        Assert.InRange(value, entry.GetProperty("interval95").GetProperty("lower").GetDouble(), entry.GetProperty("interval95").GetProperty("upper").GetDouble());
        bool judged = Judged.Contains(entry.GetProperty("name").GetString());
        Assert.Equal(judged, entry.GetProperty("limit").ValueKind == JsonValueKind.Object);
        Assert.Equal(judged, entry.GetProperty("verdict").ValueKind == JsonValueKind.Object);
        if (judged)
        {
            Assert.Contains(entry.GetProperty("verdict").GetProperty("conclusion").GetString(), (string[])["within", "outside", "undecided"]);
            Assert.InRange(entry.GetProperty("verdict").GetProperty("probabilityOfConformity").GetDouble(), 0, 1);
        }
    }
}
