using UnitsNet;

namespace PrinterMath.Resonance.Tests;

public sealed class ImpulseSequenceTests
{
    private static readonly Frequency Fifty = Frequency.FromHertz(50);

    [Fact]
    public void A_single_impulse_shapes_nothing()
    {
        ImpulseSequence nothing = ImpulseSequence.FromImpulses([0], [1]);
        Assert.Equal(0, nothing.Duration.Seconds);
        Assert.Equal(1, nothing.ResidualVibration(Fifty, 0.1), 1e-15);
        ImpulseSequence shaper = ImpulseSequence.ZeroVibration(Fifty, 0.1);
        Assert.Equal(shaper, shaper.Convolve(nothing));
        Assert.Throws<ArgumentException>(() => AllowedAcceleration.ForDeviation(nothing, Length.FromMillimeters(1)));
    }

    [Fact]
    public void Sequences_are_equal_by_value()
    {
        ImpulseSequence one = ImpulseSequence.ExtraInsensitive(Fifty, 0.07);
        ImpulseSequence same = ImpulseSequence.ExtraInsensitive(Fifty, 0.07);
        Assert.True(one == same);
        Assert.Equal(one.GetHashCode(), same.GetHashCode());
        Assert.True(one != ImpulseSequence.ExtraInsensitive(Fifty, 0.08));
    }

    // Two equal undamped ZV sequences in a row are ZVD: 1/4, 1/2, 1/4, with the middle impulses merged.
    [Fact]
    public void Convolution_merges_coincident_impulses()
    {
        ImpulseSequence zv = ImpulseSequence.ZeroVibration(Fifty, 0);
        Assert.Equal(ImpulseSequence.ZeroVibrationDerivative(Fifty, 0), zv.Convolve(zv));
    }

    [Fact]
    public void Bad_arguments_name_themselves()
    {
        Assert.Equal("dampingRatio", Assert.Throws<ArgumentOutOfRangeException>(() => ImpulseSequence.ZeroVibration(Fifty, 1)).ParamName);
        Assert.Equal("frequency", Assert.Throws<ArgumentOutOfRangeException>(() => ImpulseSequence.ZeroVibration(Frequency.Zero, 0.1)).ParamName);
        Assert.Equal("tolerance", Assert.Throws<ArgumentOutOfRangeException>(() => ImpulseSequence.ExtraInsensitive(Fifty, 0.1, 0.9)).ParamName);
        Assert.Equal("amplitudes", Assert.Throws<ArgumentException>(() => ImpulseSequence.FromImpulses([0, 1], [0.5, 0.6])).ParamName);
        Assert.Equal("times", Assert.Throws<ArgumentException>(() => ImpulseSequence.FromImpulses([0, 0], [0.5, 0.5])).ParamName);
        Assert.Throws<ArgumentOutOfRangeException>(() => ImpulseSequence.ZeroVibration(Fifty, 0.1).WorstResidual(default, 0, 0.1));
    }

    // Where the mode is not suppressed there is no band.
    [Fact]
    public void No_band_where_the_residual_is_above_the_level() =>
        Assert.False(ImpulseSequence.ZeroVibration(Fifty, 0).TryGetInsensitiveBand(Frequency.FromHertz(70), 0, 0.05, out _));

    // Undamped ZV at 1 Hz leaves |cos(πf/2)|, which falls from 1/√2 at 0.5 Hz to 0 at 1 Hz and rises to 1 at 2 Hz.
    [Fact]
    public void Worst_residual_of_a_band()
    {
        ImpulseSequence zv = ImpulseSequence.ZeroVibration(Frequency.FromHertz(1), 0);
        Assert.Equal(Math.Sqrt(0.5), zv.WorstResidual(FrequencyBand.Between(Frequency.FromHertz(0.5), Frequency.FromHertz(1.2)), 0, 0), 1e-12);
        Assert.Equal(1, zv.WorstResidual(FrequencyBand.Between(Frequency.FromHertz(1.3), Frequency.FromHertz(2.9)), 0, 0), 1e-12);
    }
}
