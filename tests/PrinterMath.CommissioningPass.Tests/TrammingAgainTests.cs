using System.Text.RegularExpressions;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>What again.csv and turned.csv add to the second step, and what is said where the turns do not explain what moved.</summary>
public sealed partial class TrammingAgainTests
{
    [Fact]
    public void TheDemonstrationShowsTheSecondPass()
    {
        using var folder = new PassFolder();
        string said = Run(folder);
        Assert.Contains("Rounds of turning still needed for the accepted spread: 0 more.", said, StringComparison.Ordinal);
        string[] names = [.. RecordEntry.Read(folder.Record).Select(entry => entry.Name)];
        Assert.Empty(new[]
        {
            "tramming.now.height_spread", "tramming.now.convergence", "tramming.now.predicted_spread", "tramming.now.screw.front_left.lead",
            "tramming.now.screw.front_left.height_change", "tramming.now.screw.front_left.rotation",
        }.Except(names));
        Assert.DoesNotContain("Turn front", File.ReadAllText(folder.Report), StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutTheFilesTheFirstTurnsStand()
    {
        using var folder = new PassFolder();
        folder.LeaveOnePass();
        Run(folder);
        Assert.DoesNotContain(RecordEntry.Read(folder.Record), entry => entry.Name.StartsWith("tramming.now", StringComparison.Ordinal));
        string report = File.ReadAllText(folder.Report);
        Assert.Contains("Turn front left", report, StringComparison.Ordinal);
        Assert.Contains("again.csv and turned.csv", report, StringComparison.Ordinal);
    }

    [Fact]
    public void AScrewTurnedTheOtherWayIsFoundOut()
    {
        using var folder = new PassFolder();
        folder.Change("turned.csv", "2,front right,clockwise,55", "2,front right,counterclockwise,55");
        Assert.Contains("front right", Diagnosis().Match(Run(folder)).Value, StringComparison.Ordinal);
    }

    [Fact]
    public void MovesThatNobodyTurnedAreFoundOut()
    {
        using var folder = new PassFolder();
        File.Delete(folder.PathOf("turned.csv"));
        string said = Run(folder);
        Assert.Contains("No screw was turned between the passes", said, StringComparison.Ordinal);
        Assert.Matches(Diagnosis(), said);
    }

    [Fact]
    public void AThirdPassIsShownInThePlaceOfTheSecond()
    {
        using var folder = new PassFolder();
        string[] second = File.ReadAllLines(folder.PathOf("again.csv"));
        File.AppendAllLines(folder.PathOf("again.csv"), second.Skip(1).Select(line => "3" + line[1..]));
        string said = Run(folder);
        Assert.Contains("Pass 3: spread", said, StringComparison.Ordinal);
        Assert.DoesNotContain("Pass 2", said, StringComparison.Ordinal);
    }

    private static string Run(PassFolder folder)
    {
        (int exitCode, string output, string error) = folder.Run();
        Assert.True(exitCode == 0, error);
        return Blank().Replace(output, " ");
    }

    [GeneratedRegex(@"Caution on again\.csv: [^-]*")]
    private static partial Regex Diagnosis();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blank();
}
