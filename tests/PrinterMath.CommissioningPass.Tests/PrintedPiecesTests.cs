namespace PrinterMath.CommissioningPass.Tests;

/// <summary>The step on walls.csv and fit.csv: each may be missing, and a fit that never changes its answer holds no estimate.</summary>
public sealed class PrintedPiecesTests
{
    [Fact]
    public void WithoutTheFilesTheStepIsLeftOut()
    {
        using var folder = new PassFolder();
        File.Delete(folder.PathOf("walls.csv"));
        File.Delete(folder.PathOf("fit.csv"));
        Assert.DoesNotContain("Extrusion", Run(folder).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("walls.csv", "extrusion.fit_flow")]
    [InlineData("fit.csv", "extrusion.wall", "extrusion.flow_factor", "extrusion.flow")]
    public void OneFileAloneGivesItsOwnEntries(string missing, params string[] names)
    {
        using var folder = new PassFolder();
        File.Delete(folder.PathOf(missing));
        Assert.Equal(names, Run(folder).Names);
    }

    [Theory]
    [InlineData("fits")]
    [InlineData("does not fit")]
    public void AllAnswersAlikeGiveAFindingAndNoEstimate(string outcome)
    {
        using var folder = new PassFolder();
        File.WriteAllText(folder.PathOf("fit.csv"), $"flow,outcome\n0.94,{outcome}\n0.96,{outcome}\n0.98,{outcome}\n");
        (string[] names, string output) = Run(folder);
        Assert.DoesNotContain("extrusion.fit_flow", names);
        Assert.Contains("Blocking on fit.csv", output, StringComparison.Ordinal);
        Assert.Contains("print the next pair", string.Join(' ', output.Split('\n').Select(line => line.Trim())), StringComparison.Ordinal);
    }

    private static (string[] Names, string Output) Run(PassFolder folder)
    {
        (int exitCode, string output, _) = folder.Run();
        Assert.Equal(0, exitCode);
        return ([.. RecordEntry.Read(folder.Record).Select(entry => entry.Name).Where(name => name.StartsWith("extrusion.", StringComparison.Ordinal))], output);
    }
}
