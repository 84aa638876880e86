using System.Diagnostics;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>Each exercise against its teacher's key, whose numbers are worked out without the library.</summary>
public sealed class LabTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    [Theory]
    [InlineData("tension")]
    [InlineData("tramming")]
    public async Task AgreesWithTheTeachersKey(string exercise)
    {
        string labs = Path.Combine(Root(), "examples", "labs");
        string[] expected = [.. (await File.ReadAllLinesAsync(Path.Combine(labs, "keys", exercise + ".md"))).Where(line => line.StartsWith("Step ", StringComparison.Ordinal))];
        Assert.Equal(6, expected.Length);

        var start = new ProcessStartInfo("dotnet", ["run", Path.Combine(labs, exercise + ".cs"), "--", "--student", "17", "--answers", "key"])
        {
            RedirectStandardOutput = true,
            WorkingDirectory = labs,
        };

        // What the surrounding test run sets for its own build must not reach the exercise's; a build node that stays would hold the output open.
        foreach (string name in start.Environment.Keys.Where(name => name.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase)).ToArray())
        {
            start.Environment.Remove(name);
        }

        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        start.Environment["UseSharedCompilation"] = "false";
        using var process = Process.Start(start)!;
        using var limit = new CancellationTokenSource(Patience);
        string output = await process.StandardOutput.ReadToEndAsync(limit.Token);
        await process.WaitForExitAsync(limit.Token);

        Assert.True(process.ExitCode == 0, output);
        string[] printed = [.. output.Split('\n').Select(line => line.TrimEnd())];
        Assert.All(expected, line => Assert.Contains(line, printed));
        Assert.Contains("Checker, students 1 to 99: 0 slips without a hint of their own", printed);
    }

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "PrinterMath.sln")))
        {
            folder = folder.Parent;
        }

        return Assert.IsType<DirectoryInfo>(folder).FullName;
    }
}
