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
    ];

    private static readonly string[] Judged =
        ["tension.a.tension", "tension.b.tension", "tension.difference", "tramming.height_spread", "tramming.predicted_spread"];

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
        Assert.Equal(["tension", "tramming"], steps.Select(step => step.GetProperty("name").GetString()));
        JsonElement[] entries = [.. steps.SelectMany(step => step.GetProperty("entries").EnumerateArray())];
        string[] names = [.. entries.Select(entry => entry.GetProperty("name").GetString()!)];
        Assert.Equal(names.Length, names.Distinct().Count());
        Assert.Empty(Always.Except(names));
        Assert.Equal(2 * (File.ReadAllLines(folder.PathOf("screws.csv")).Length - 1), names.Count(name => name.StartsWith("tramming.screw.", StringComparison.Ordinal)));
        Assert.All(entries, CheckEntry);
        Assert.All(steps, step => Assert.NotEmpty(step.GetProperty("cautions").EnumerateArray()));
    }

    [Fact]
    public void OnlyTheRecordIsLeft()
    {
        using var folder = new PassFolder();
        folder.Run();
        Assert.Equal([folder.Record], Directory.GetFiles(Path.GetDirectoryName(folder.Record)!));
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
