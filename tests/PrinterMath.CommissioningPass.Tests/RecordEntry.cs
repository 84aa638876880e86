using System.Text.Json;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>One entry of commissioning.json, read back.</summary>
internal sealed record RecordEntry(string Name, double Value, double StandardUncertainty, double? DegreesOfFreedom, double Lower, double Upper)
{
    internal static IReadOnlyList<RecordEntry> Read(string path)
    {
        using JsonDocument record = JsonDocument.Parse(File.ReadAllText(path));
        return
        [
            .. record.RootElement.GetProperty("steps").EnumerateArray()
                .SelectMany(step => step.GetProperty("entries").EnumerateArray())
                .Select(Of),
        ];
    }

    /// <summary>Numbers chosen, by name.</summary>
    internal static IReadOnlyDictionary<string, double> Settings(string path)
    {
        using JsonDocument record = JsonDocument.Parse(File.ReadAllText(path));
        return record.RootElement.GetProperty("steps").EnumerateArray()
            .SelectMany(step => step.GetProperty("settings").EnumerateArray())
            .ToDictionary(setting => setting.GetProperty("name").GetString()!, setting => setting.GetProperty("value").GetDouble());
    }

    private static RecordEntry Of(JsonElement entry)
    {
        JsonElement degrees = entry.GetProperty("degreesOfFreedom");
        JsonElement interval = entry.GetProperty("interval95");
        return new RecordEntry(
            entry.GetProperty("name").GetString()!,
            entry.GetProperty("value").GetDouble(),
            entry.GetProperty("standardUncertainty").GetDouble(),
            degrees.ValueKind == JsonValueKind.Null ? null : degrees.GetDouble(),
            interval.GetProperty("lower").GetDouble(),
            interval.GetProperty("upper").GetDouble());
    }
}
