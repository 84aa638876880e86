using System.Numerics;
using System.Text.Json;
using WorkshopSimulator;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>The step on acceleration.csv: left out without the file, with a finding where rows were repaired, and its sequences at the planted modes.</summary>
public sealed class TappedHeadTests
{
    [Fact]
    public void WithoutTheFileTheStepIsLeftOut()
    {
        using var folder = new PassFolder();
        File.Delete(folder.PathOf("acceleration.csv"));
        (int exitCode, string output, _) = folder.Run();
        Assert.Equal(0, exitCode);
        Assert.DoesNotContain("Resonance", output, StringComparison.Ordinal);
        Assert.DoesNotContain(RecordEntry.Read(folder.Record), entry => entry.Name.StartsWith("resonance.", StringComparison.Ordinal));
    }

    [Fact]
    public void UnsortedRowsGiveTheSameModesAndAFinding()
    {
        using var folder = new PassFolder();
        RecordEntry[] kept = Modes(folder).Modes;
        string[] lines = File.ReadAllLines(folder.PathOf("acceleration.csv"));
        File.WriteAllLines(folder.PathOf("acceleration.csv"), [lines[0], .. lines[801..], .. lines[1..801]]);
        (RecordEntry[] modes, string output) = Modes(folder);
        Assert.Equal(kept, modes);
        Assert.Contains("the record was sorted", output, StringComparison.Ordinal);
    }

    [Fact]
    public void AGapIsBridgedWithAFinding()
    {
        using var folder = new PassFolder();
        string[] lines = File.ReadAllLines(folder.PathOf("acceleration.csv"));
        File.WriteAllLines(folder.PathOf("acceleration.csv"), [.. lines[..900], .. lines[920..]]);
        (RecordEntry[] modes, string output) = Modes(folder);
        Assert.NotEmpty(modes);
        Assert.Contains("20 samples are missing in 1 gaps", output, StringComparison.Ordinal);
    }

    /// <summary>
    /// 5 % is the simulated owner's limit, 0.2 % room for a mode that lies outside the two standard uncertainties of the choice. Seeds 1 to 5.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void TheChosenSequenceStopsThePlantedMode(ulong seed)
    {
        WorkshopVisit visit = Workshop.Visit(seed);
        using var folder = new PassFolder();
        WorkshopFolder.Write(visit, folder.Root);
        Assert.Equal(0, folder.Run().ExitCode);
        Assert.InRange(LeftBy(folder.Record, "x", visit.Head.ModesX[0]), 0, 0.052);
        Assert.InRange(LeftBy(folder.Record, "y", visit.Head.ModesY[0]), 0, 0.052);
    }

    /// <summary>Free oscillations of all impulses, added as complex numbers at the last one, over that of a single impulse there.</summary>
    private static double LeftBy(string path, string axis, DampedMode mode)
    {
        using JsonDocument record = JsonDocument.Parse(File.ReadAllText(path));
        Dictionary<string, double> settings = record.RootElement.GetProperty("steps").EnumerateArray()
            .SelectMany(step => step.GetProperty("settings").EnumerateArray())
            .ToDictionary(setting => setting.GetProperty("name").GetString()!, setting => setting.GetProperty("value").GetDouble());
        int count = settings.Keys.Count(name => name.StartsWith($"resonance.{axis}.impulse_", StringComparison.Ordinal)) / 2;
        Assert.True(count >= 2);
        double omega = 2 * Math.PI * mode.FrequencyHertz;
        var pole = new Complex(-mode.DampingRatio * omega, omega * Math.Sqrt(1 - (mode.DampingRatio * mode.DampingRatio)));
        double last = settings[$"resonance.{axis}.impulse_{count}.time"];
        return Enumerable.Range(1, count)
            .Select(i => settings[$"resonance.{axis}.impulse_{i}.amplitude"] * Complex.Exp(pole * (last - settings[$"resonance.{axis}.impulse_{i}.time"])))
            .Aggregate((a, b) => a + b).Magnitude;
    }

    /// <summary>The modes, and the output with its line breaks undone.</summary>
    private static (RecordEntry[] Modes, string Output) Modes(PassFolder folder)
    {
        (int exitCode, string output, _) = folder.Run();
        Assert.Equal(0, exitCode);
        return ([.. RecordEntry.Read(folder.Record).Where(entry => entry.Name.StartsWith("resonance.", StringComparison.Ordinal))], string.Join(' ', output.Split('\n').Select(line => line.Trim())));
    }
}
