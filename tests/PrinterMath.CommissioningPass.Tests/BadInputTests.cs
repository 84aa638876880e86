namespace PrinterMath.CommissioningPass.Tests;

/// <summary>Each file that cannot be used gives one line that names file, line and rule, exit code 1, and leaves nothing behind.</summary>
public sealed class BadInputTests
{
    public static TheoryData<string> Names => [.. BadInput.Cases.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void OneLineAndNothingWritten(string name)
    {
        BadInput bad = BadInput.Cases[name];
        using var folder = new PassFolder();
        bad.Spoil(folder);
        (int exitCode, string output, string error) = folder.Run();
        Assert.Equal(1, exitCode);
        Assert.Empty(output);
        Assert.StartsWith(bad.Start, error, StringComparison.Ordinal);
        Assert.Contains(bad.Rule, error, StringComparison.Ordinal);
        Assert.Equal(1, error.Count(c => c == '\n'));
        Assert.EndsWith("\n", error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(Path.GetDirectoryName(folder.Record)!));
    }

    [Fact]
    public void MissingFolder()
    {
        (int exitCode, string output, string error) = PassFolder.Run("no such folder");
        Assert.Equal(1, exitCode);
        Assert.Empty(output);
        Assert.Equal("no such folder: the folder is missing.\n", error);
    }

    [Fact]
    public void RecordIntoMissingFolder()
    {
        using var folder = new PassFolder();
        (int exitCode, string output, string error) = PassFolder.Run(folder.Root, "--output", Path.Combine(folder.Root, "nowhere", "c.json"));
        Assert.Equal(1, exitCode);
        Assert.Empty(output);
        Assert.Contains("cannot be written", error, StringComparison.Ordinal);
    }

    [Fact]
    public void AFaultLeavesAnEarlierRecordAlone()
    {
        using var folder = new PassFolder();
        Assert.Equal(0, folder.Run().ExitCode);
        string before = File.ReadAllText(folder.Record);
        File.WriteAllText(folder.PathOf("probe.csv"), string.Empty);
        Assert.Equal(1, folder.Run().ExitCode);
        Assert.Equal(before, File.ReadAllText(folder.Record));
    }

    [Theory]
    [InlineData("--output")]
    [InlineData("--colour")]
    [InlineData("one", "two")]
    [InlineData("--output", "a", "--output", "b")]
    public void WrongCommandLine(params string[] args)
    {
        (int exitCode, string output, string error) = PassFolder.Run(args);
        Assert.Equal(2, exitCode);
        Assert.Empty(output);
        Assert.Equal(1, error.Count(c => c == '\n'));
    }

    [Fact]
    public void HelpSaysHow()
    {
        (int exitCode, string output, string error) = PassFolder.Run("--help");
        Assert.Equal(0, exitCode);
        Assert.Empty(error);
        Assert.Contains("--output", output, StringComparison.Ordinal);
    }
}
