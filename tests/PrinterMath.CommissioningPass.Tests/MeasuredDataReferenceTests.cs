namespace PrinterMath.CommissioningPass.Tests;

/// <summary>Real measurements through the whole program, against what others say of the same data.</summary>
[Trait("Evidence", "Published")]
public sealed class MeasuredDataReferenceTests
{
    private static readonly Lazy<(IReadOnlyList<RecordEntry> Entries, string Output)> Pass = new(() =>
    {
        using var folder = new PassFolder("measured");
        string output = folder.Run().Output;
        return (RecordEntry.Read(folder.Record), output);
    });

    /// <summary>
    /// Both recordings are the note D2, 73.416 Hz at A4 = 440 Hz in equal temperament (the name is the recording artist's). A player's
    /// intonation is trusted to 10 cents, 0.6 %.
    /// </summary>
    [Theory]
    [InlineData("tension.a.frequency")]
    [InlineData("tension.b.frequency")]
    public void PitchOfTheNote(string name) => Assert.InRange(Entry(name).Value, 73.416 * (1 - 0.0058), 73.416 * (1 + 0.0058));

    /// <summary>The sensor's maker gives a flatness of 4.406 µm for this map; the program prints one decimal.</summary>
    [Fact]
    public void FlatnessOfTheSensor() => Assert.Contains("own shape: 4.4 µm", Pass.Value.Output, StringComparison.Ordinal);

    /// <summary>Least-squares slopes 1.4835e-5 and 2.44890e-4 by an ordinary least-squares routine of another library; half of the last digit given.</summary>
    [Fact]
    public void SlopesOfTheSensor()
    {
        Assert.InRange(Math.Tan(-Entry("tramming.tilt_about_y").Value), 1.4835e-5 - 0.5e-9, 1.4835e-5 + 0.5e-9);
        Assert.InRange(Math.Tan(Entry("tramming.tilt_about_x").Value), 2.44890e-4 - 0.5e-9, 2.44890e-4 + 0.5e-9);
    }

    /// <summary>
    /// The record's own author fits 212.092530551 Hz (vibration_toolbox, data/case1.mat); a rational-fraction fit gives 212.0918 Hz and the decay of the envelope 212.092 to
    /// 212.110 Hz. 0.05 Hz holds all of these.
    /// </summary>
    [Fact]
    public void RingDownOfTheStructure() => Assert.Contains(
        Pass.Value.Entries,
        entry => entry.Name.StartsWith("resonance.x.mode_", StringComparison.Ordinal) && entry.Name.EndsWith(".frequency", StringComparison.Ordinal) && Math.Abs(entry.Value - 212.09) < 0.05);

    private static RecordEntry Entry(string name) => Pass.Value.Entries.Single(entry => entry.Name == name);
}
