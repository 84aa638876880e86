using System.Text.Json;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>What drive.csv adds to the first step, and what is said where it holds little or the drive cannot do what is asked.</summary>
public sealed class DriveStepTests
{
    private const int NeededRows = 12;

    private static readonly string[] Window =
        ["tension.window.lower", "tension.window.upper", "tension.window.a.lower_frequency", "tension.window.b.lower_frequency", "tension.window.a.upper_frequency", "tension.window.b.upper_frequency"];

    [Fact]
    public void TheDemonstrationHasAllOfIt()
    {
        using var folder = new PassFolder();
        Assert.Equal(0, folder.Run().ExitCode);
        string[] names = Names(folder);
        Assert.Empty(Window.Concat(
            ["tension.a.window", "tension.b.window", "tension.a.turns", "tension.b.turns", "tension.predicted_difference", "tension.motor.required", "tension.motor.reserve",
             "tension.motor.acceleration", "tension.axis.lowest_frequency", "tension.axis.highest_frequency", "tension.axis.scale_change"]).Except(names));
        IReadOnlyDictionary<string, double> settings = RecordEntry.Settings(folder.Record);
        Assert.Equal(26.25, settings["tension.target"], 1e-9);   // 5 % inside the owner's 25 N
        Assert.True(settings["tension.window.recommended"] < 25);
    }

    [Fact]
    public void WithoutTheFileNothingIsAdded()
    {
        using var folder = new PassFolder();
        File.Delete(folder.PathOf("drive.csv"));
        Assert.Equal(0, folder.Run().ExitCode);
        Assert.DoesNotContain(Names(folder), name => name.StartsWith("tension.window", StringComparison.Ordinal) || name.StartsWith("tension.motor", StringComparison.Ordinal));
    }

    [Fact]
    public void WithTheNeededRowsAloneItSaysWhatIsNotJudgedAndWhichRangesTookTheirPlace()
    {
        using var folder = new PassFolder();
        File.WriteAllLines(folder.PathOf("drive.csv"), File.ReadLines(folder.PathOf("drive.csv")).Take(NeededRows + 1).ToArray());
        (int exitCode, string output, string error) = folder.Run();
        Assert.True(exitCode == 0, error);
        string said = Flat(output);
        Assert.Contains("The motors are not judged: drive.csv needs holding_torque, rated_current, winding_resistance, supply_voltage.", said, StringComparison.Ordinal);
        Assert.Contains("Turns on belt A are not given: drive.csv needs tensioner_lead and tensioner_strands", said, StringComparison.Ordinal);
        Assert.Contains("Turns on belt B are not given", said, StringComparison.Ordinal);
        Assert.Contains("Not stated in drive.csv, so common practice takes its place: mass_x, 0.2 to 0.7 kg; mass_y, 0.5 to 1.5 kg; friction, 0.5 to 4 N; slack_side_share, 10 to 30 % of the force; shaft_load, no limit, only a warning: look up the maker's; idler_load, 80 to 300 N; working_strength, 4 to 15 N/mm; belt_stiffness, 1500 to 3000 N/mm.", said, StringComparison.Ordinal);
        Assert.Empty(Window.Except(Names(folder)));
        Assert.DoesNotContain("tension.motor.reserve", Names(folder));
    }

    [Fact]
    public void ADriveThatCannotDoItHasNoWindowAndItSaysWhy()
    {
        using var folder = new PassFolder();
        folder.Change("drive.csv", "acceleration,20,", "acceleration,120,");
        (int exitCode, string output, string error) = folder.Run();
        Assert.True(exitCode == 0, error);
        Assert.Contains("Blocking on drive.csv: The slack side asks for at least", Flat(output), StringComparison.Ordinal);
        Assert.Contains("No tension is known to serve that acceleration", Flat(output), StringComparison.Ordinal);
        Assert.Contains("layers will shift", Flat(output), StringComparison.Ordinal);
        Assert.DoesNotContain("tension.a.window", Names(folder));
        Assert.DoesNotContain("tension.a.turns", Names(folder));
    }

    [Fact]
    public void ALastTurnThatTellsNothingFallsBackOnTheBeltsStiffness()
    {
        using var folder = new PassFolder();
        folder.Change("drive.csv", "frequency_before_a,93.7,", "frequency_before_a,105.26,");
        (int exitCode, string output, string error) = folder.Run();
        Assert.True(exitCode == 0, error);
        Assert.Contains("Tensioner A: the last turn does not tell its gain.", Flat(output), StringComparison.Ordinal);
        Assert.Contains("per turn, from the belt's stiffness", Flat(output), StringComparison.Ordinal);
        Assert.Contains("tension.a.turns", Names(folder));
    }

    [Theory]
    [InlineData("acceleration,20,", "acceleration,120,")]
    [InlineData("shaft_load,90,N,\n", "")]
    [InlineData("supply_voltage,24,V,\n", "")]
    public void WhatIsOddStillKeepsTheSchema(string from, string to)
    {
        using var folder = new PassFolder();
        folder.Change("drive.csv", from, to);
        Assert.Equal(0, folder.Run().ExitCode);
        RecordSchemaTests.AssertKept(File.ReadAllText(folder.Record));
    }

    private static string[] Names(PassFolder folder)
    {
        using JsonDocument record = JsonDocument.Parse(File.ReadAllText(folder.Record));
        return [.. record.RootElement.GetProperty("steps")[0].GetProperty("entries").EnumerateArray().Select(entry => entry.GetProperty("name").GetString()!)];
    }

    private static string Flat(string output) => string.Join(' ', output.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
