using WorkshopSimulator;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>The same sound in every kind of WAV file gives the same pitch.</summary>
public sealed class WaveFormatTests
{
    private static readonly WorkshopVisit Visit = Workshop.Visit(1);
    private static readonly double[] Sound = [.. Visit.RecordingA.Select(sample => (double)sample)];
    private static readonly RecordEntry Reference = Heard(WaveBytes.Pcm(16, 1, Visit.SampleRateHertz, Sound)).Entry;

    public static TheoryData<int, bool> PcmKinds => new()
    {
        { 16, false }, { 16, true }, { 24, false }, { 24, true }, { 32, false }, { 32, true },
    };

    [Theory]
    [MemberData(nameof(PcmKinds))]
    public void IntegerSamples(int bits, bool extensible) =>
        AssertSame(Heard(WaveBytes.Pcm(bits, 1, Visit.SampleRateHertz, Sound, extensible)).Entry);

    [Theory]
    [InlineData(32, false)]
    [InlineData(32, true)]
    [InlineData(64, false)]
    [InlineData(64, true)]
    public void FloatingPointSamples(int bits, bool extensible) =>
        AssertSame(Heard(WaveBytes.Float(bits, 1, Visit.SampleRateHertz, Sound, extensible)).Entry);

    /// <summary>Eight bits add noise 48 dB down, so the pitch may move, but not by more than the eight-bit reading itself is said to be worth.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void EightBits(bool extensible)
    {
        RecordEntry heard = Heard(WaveBytes.Pcm(8, 1, Visit.SampleRateHertz, Sound, extensible)).Entry;
        Assert.InRange(Reference.Value, heard.Value - heard.StandardUncertainty, heard.Value + heard.StandardUncertainty);
    }

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, false)]
    [InlineData(2, true)]
    public void OfTwoChannelsTheLouder(int louder, bool extensible)
    {
        double[] stereo = [.. Sound.SelectMany(sample => louder == 1 ? new[] { sample, sample / 50 } : [-sample / 50, sample])];
        (RecordEntry entry, string output) = Heard(WaveBytes.Pcm(16, 2, Visit.SampleRateHertz, stereo, extensible));
        AssertSame(entry);
        Assert.Contains($"belt-a.wav has 2 channels; channel {louder}, the loudest, is used.", output, StringComparison.Ordinal);
    }

    [Fact]
    public void ChunksBeforeTheSoundAreSkipped()
    {
        byte[] list = [.. "LIST"u8, 5, 0, 0, 0, .. "INFOx"u8, 0];
        AssertSame(Heard(WaveBytes.Pcm(16, 1, Visit.SampleRateHertz, Sound, before: list)).Entry);
    }

    /// <summary>An odd number of bytes takes a padding byte, which some writers leave out at the end of the file.</summary>
    [Fact]
    public void MissingPaddingAtTheEnd()
    {
        byte[] wave = WaveBytes.Pcm(24, 1, Visit.SampleRateHertz, Sound[..(Sound.Length - 1 + (Sound.Length % 2))]);
        AssertSame(Heard(wave[..^1]).Entry);
    }

    [Fact]
    public void FloatingPointThatIsNoNumberIsRefused()
    {
        double[] spoilt = [.. Sound];
        spoilt[1000] = double.NaN;
        using var folder = new PassFolder();
        File.WriteAllBytes(folder.PathOf("belt-a.wav"), WaveBytes.Float(32, 1, Visit.SampleRateHertz, spoilt));
        (int exitCode, _, string error) = folder.Run();
        Assert.Equal(1, exitCode);
        Assert.Equal("belt-a.wav: sample 1000 is not a finite number.\n", error);
    }

    /// <summary>Rounding to another number of bits moves a sample by at most 2^-16; a hundredth of the standard uncertainty is far above that.</summary>
    private static void AssertSame(RecordEntry heard) =>
        Assert.InRange(Math.Abs(heard.Value - Reference.Value), 0, Reference.StandardUncertainty / 100);

    private static (RecordEntry Entry, string Output) Heard(byte[] wave)
    {
        using var folder = new PassFolder();
        File.WriteAllBytes(folder.PathOf("belt-a.wav"), wave);
        (int exitCode, string output, string error) = folder.Run();
        Assert.True(exitCode == 0, error);
        return (RecordEntry.Read(folder.Record).Single(entry => entry.Name == "tension.a.frequency"), string.Join(' ', output.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)));
    }
}
