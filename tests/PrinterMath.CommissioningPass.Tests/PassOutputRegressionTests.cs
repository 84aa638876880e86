using System.Globalization;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>The program's own printed output, kept: a change here is to be looked at, not a proof of a fault.</summary>
public sealed class PassOutputRegressionTests
{
    [Theory]
    [InlineData("demo")]
    [InlineData("measured")]
    public void OutputIsAsKept(string data)
    {
        using var folder = new PassFolder(data);
        (int exitCode, string output, string error) = folder.Run();
        Assert.Equal(0, exitCode);
        Assert.Empty(error);
        string kept = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "expected", data + ".txt"));
        Assert.Equal(kept, Plain(output, folder));
    }

    [Theory]
    [InlineData("demo")]
    [InlineData("measured")]
    public void RedirectedOutputIsPlainAndFits(string data)
    {
        using var folder = new PassFolder(data);
        string output = Plain(folder.Run().Output, folder);
        Assert.DoesNotContain('\u001b', output);
        Assert.All(output.Split('\n'), line => Assert.True(new StringInfo(line).LengthInTextElements <= 80, line));
    }

    [Fact]
    public void TheDemonstrationFolderIsWhatTheSimulatorWritesForSeedOne()
    {
        using var folder = new PassFolder();
        string fresh = Path.Combine(folder.Root, "fresh");
        WorkshopSimulator.WorkshopFolder.Write(WorkshopSimulator.Workshop.Visit(1), fresh);
        Assert.All(Directory.GetFiles(fresh, "*.csv"), file => Assert.Equal(File.ReadAllText(folder.PathOf(Path.GetFileName(file))), File.ReadAllText(file)));
        Assert.All(Directory.GetFiles(fresh, "*.wav"), file => AssertSameSound(folder.PathOf(Path.GetFileName(file)), file));
    }

    /// <summary>The last bit of a sample may differ where another processor rounds a cosine otherwise.</summary>
    private static void AssertSameSound(string kept, string fresh)
    {
        byte[] a = File.ReadAllBytes(kept);
        byte[] b = File.ReadAllBytes(fresh);
        Assert.Equal(a.Length, b.Length);
        Assert.Equal(a[..44], b[..44]);
        for (int i = 44; i < a.Length; i += 2)
        {
            Assert.InRange(BitConverter.ToInt16(a, i) - BitConverter.ToInt16(b, i), -1, 1);
        }
    }

    private static string Plain(string output, PassFolder folder) => string.Join(
        '\n', output.Replace(folder.Record, "RECORD", StringComparison.Ordinal).Replace(folder.Report, "REPORT", StringComparison.Ordinal).Split('\n').Select(line => line.TrimEnd()));
}
