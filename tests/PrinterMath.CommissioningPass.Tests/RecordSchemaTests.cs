using System.Text.Json.Nodes;
using Json.Schema;
using WorkshopSimulator;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>Every record that the program writes keeps commissioning.schema.json, and the schema refuses broken ones.</summary>
public sealed class RecordSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromFile(Path.Combine(AppContext.BaseDirectory, "commissioning.schema.json"));

    private static readonly Lazy<string> Demo = new(() =>
    {
        using var folder = new PassFolder();
        return Written(folder);
    });

    /// <summary>Each breaks one rule in the first entry that has a verdict, or beside it.</summary>
    private static readonly Dictionary<string, Action<JsonNode, JsonObject>> Breaks = new()
    {
        ["unit missing"] = (_, entry) => entry.Remove("unit"),
        ["unit empty"] = (_, entry) => entry["unit"] = string.Empty,
        ["value is text"] = (_, entry) => entry["value"] = "25 N",
        ["uncertainty missing"] = (_, entry) => entry.Remove("standardUncertainty"),
        ["uncertainty negative"] = (_, entry) => entry["standardUncertainty"] = -1,
        ["verdict unknown"] = (_, entry) => entry["verdict"]!["conclusion"] = "fine",
        ["verdict without limit"] = (_, entry) => entry["limit"] = null,
        ["limit without verdict"] = (_, entry) => entry["verdict"] = null,
        ["limit without bounds"] = (_, entry) => entry["limit"] = new JsonObject { ["lower"] = null, ["upper"] = null },
        ["probability above one"] = (_, entry) => entry["verdict"]!["probabilityOfConformity"] = 1.5,
        ["extra property of an entry"] = (_, entry) => entry["colour"] = "red",
        ["extra property of the record"] = (record, _) => record["madeBy"] = "hand",
        ["name without a dot"] = (_, entry) => entry["name"] = "tension",
        ["step unknown"] = (record, _) => record["steps"]![0]!["name"] = "polish",
        ["severity unknown"] = (record, _) => record["steps"]![0]!["findings"]![0]!["severity"] = "grave",
        ["setting without a unit"] = (record, _) => record["steps"]![3]!["settings"]![0]!.AsObject().Remove("unit"),
        ["another version"] = (record, _) => record["schemaVersion"] = 1,
        ["no version"] = (record, _) => record.AsObject().Remove("schemaVersion"),
    };

    public static TheoryData<string> Names => [.. Breaks.Keys];

    [Theory]
    [InlineData("demo")]
    [InlineData("measured")]
    public void TheFoldersKeepIt(string data)
    {
        using var folder = new PassFolder(data);
        AssertKept(Written(folder));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void OtherMachinesKeepIt(int seed)
    {
        using var folder = new PassFolder();
        WorkshopFolder.Write(Workshop.Visit((ulong)seed), folder.Root);
        AssertKept(Written(folder));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void ABrokenRecordIsRefused(string name)
    {
        JsonNode record = JsonNode.Parse(Demo.Value)!;
        JsonObject judged = record["steps"]!.AsArray().SelectMany(step => step!["entries"]!.AsArray()).Select(entry => entry!.AsObject()).First(entry => entry["verdict"] is not null);
        Breaks[name](record, judged);
        Assert.False(Schema.Evaluate(record).IsValid);
    }

    /// <summary>The schema itself keeps the dialect it names.</summary>
    [Fact]
    public void TheSchemaIsASchema() => Assert.True(
        MetaSchemas.Draft202012.Evaluate(JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "commissioning.schema.json")))).IsValid);

    private static string Written(PassFolder folder)
    {
        (int exitCode, _, string error) = folder.Run();
        Assert.True(exitCode == 0, error);
        return File.ReadAllText(folder.Record);
    }

    internal static void AssertKept(string record)
    {
        EvaluationResults results = Schema.Evaluate(JsonNode.Parse(record), new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(results.IsValid, string.Join('\n', results.Details.Where(detail => detail.HasErrors).SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"))));
    }
}
