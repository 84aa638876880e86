using UnitsNet;

namespace PrinterMath.Measurement.Tests;

public sealed class SignalAndPointTests
{
    [Fact]
    public void A_signal_keeps_its_own_copy()
    {
        double[] samples = [1, 2, 3, 4];
        SampledSignal signal = SampledSignal.FromSamples(samples, Frequency.FromKilohertz(2));
        samples[0] = 99;
        Assert.Equal(1, signal.Samples[0]);
        Assert.Equal(2e-3, signal.Duration.Seconds, 1e-15);
        Assert.Equal("4 samples at 2000 Hz (0.002 s)", signal.ToString());
    }

    [Fact]
    public void A_signal_is_checked()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SampledSignal.FromSamples(Array.Empty<double>(), Frequency.FromHertz(8000)));
        Assert.Throws<ArgumentOutOfRangeException>(() => SampledSignal.FromSamples([1.0], Frequency.FromHertz(0)));
        ArgumentOutOfRangeException e = Assert.Throws<ArgumentOutOfRangeException>(() => SampledSignal.FromSamples([1.0, double.NaN], Frequency.FromHertz(8000)));
        Assert.Contains("samples[1]", e.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => SampledSignal.FromSamples([1f, float.PositiveInfinity], Frequency.FromHertz(8000)));
    }

    [Fact]
    public void A_point_says_whether_its_height_is_known()
    {
        ProbePoint bare = ProbePoint.At(Length.FromMillimeters(20), Length.FromMillimeters(30), Length.FromMillimeters(0.05));
        ProbePoint known = ProbePoint.At(
            Length.FromMillimeters(20), Length.FromMillimeters(30), Measured.Of(Length.FromMillimeters(0.05), Length.FromMicrometers(5)));
        Assert.False(bare.HasUncertainty);
        Assert.True(known.HasUncertainty);
        Assert.NotEqual(bare, known);
        Assert.Equal("(20, 30, 0.05) mm", bare.ToString());
        Assert.Throws<ArgumentOutOfRangeException>(() => ProbePoint.FromMeters(0, 0, double.NaN));
    }

    [Fact]
    public void Findings_are_equal_by_code_and_numbers()
    {
        var one = new Finding("pluck.none", FindingSeverity.Blocking, "No pluck.", new FindingNumber("level", -80, "dB"));
        var other = new Finding("pluck.none", FindingSeverity.Blocking, "Nothing was heard.", new FindingNumber("level", -80, "dB"));
        Assert.Equal(one, other);
        Assert.Equal("pluck.none: No pluck.", one.ToString());
        Assert.Same(one, new IndeterminateException(one).Finding);
        Assert.Throws<ArgumentException>(() => new Finding(" ", FindingSeverity.Note, "x"));
    }
}
