using UnitsNet;

namespace PrinterMath.Resonance.Tests;

[Trait("Evidence", "Published")]
public sealed class SpecifiedInsensitivityReferenceTests
{
    // Closed form without damping for three impulses A, 1 − 2A, A at 0, τ, 2τ and V = 5 % over 1 ± I/2, derived from the residual |1 − 2A + 2A·cos(2πrτ)| and evaluated with NumPy, six digits:
    // (1 − V)(1 − cos(2πr₂τ)) = (1 + V)(1 − cos(2πr₁τ)) while both ends are touched, else A = (1 + V)/4 and τ = acos((3V − 1)/(1 + V))/(2πr₁).
    [Theory]
    [InlineData(0.07, 0.407869, 0.286337)]
    [InlineData(0.08, 0.343902, 0.325256)]
    [InlineData(0.10, 0.296760, 0.371095)]
    [InlineData(0.15, 0.268212, 0.421749)]
    [InlineData(0.20, 0.262859, 0.443856)]
    [InlineData(0.25, 0.262500, 0.457300)]
    [InlineData(0.30, 0.262500, 0.470750)]
    [InlineData(0.35, 0.262500, 0.485015)]
    public void Undamped_three_impulses(double width, double amplitude, double spacing)
    {
        ImpulseSequence s = ImpulseSequence.SpecifiedInsensitivity([Range(1 - (width / 2), 1 + (width / 2), 0, 0)]);
        Assert.Equal(3, s.Count);
        Assert.Equal(amplitude, s.Amplitudes[0], 6e-7);
        Assert.Equal(amplitude, s.Amplitudes[2], 6e-7);
        Assert.Equal(spacing, s.Times[1], 6e-7);
        Assert.Equal(2 * spacing, s.Times[2], 1.1e-6);
    }

    // At the width of EI and of two humps (closed forms of Dolph-Chebyshev windows) the shortest sequence is theirs. Solutions of different kind meet there: the duration is good to 1e-4.
    [Theory]
    [InlineData(1, 0.399451, 1)]
    [InlineData(2, 0.724544, 1.5)]
    public void Bands_of_extra_insensitive_sequences(int humps, double width, double duration)
    {
        ImpulseSequence s = ImpulseSequence.SpecifiedInsensitivity([Range(1 - (width / 2), 1 + (width / 2), 0, 0)]);
        Assert.Equal(duration, s.Duration.Seconds, 1e-4);
        Assert.True(s.Count >= humps + 2);
    }

    // Shortest durations by linear programs, data/specified_insensitivity_scipy.py (SciPy 1.10.1): good to 0.2 % as its head says.
    [Theory]
    [InlineData(0.05, 0.9, 1.1, 0.1, 0.1, 0.8495)]
    [InlineData(0.05, 0.8, 1.2, 0.1, 0.1, 0.9666)]
    [InlineData(0.05, 0.8, 1.2, 0.02, 0.1, 0.9993)]
    [InlineData(0.10, 0.8, 1.2, 0, 0, 0.8994)]
    [InlineData(0.05, 0.75, 1.25, 0, 0, 1.2460)]
    [InlineData(0.05, 0.7, 1.3, 0, 0, 1.3666)]
    public void Durations_by_linear_programs(double tolerance, double low, double high, double zeta0, double zeta1, double duration) =>
        Assert.Equal(duration, ImpulseSequence.SpecifiedInsensitivity([Range(low, high, zeta0, zeta1)], tolerance).Duration.Seconds, 2e-3 * duration);

    // Derived without damping: 0, τ, 2τ with τ = 1/(f₁ + f₂) and A = 1/(2 − 2cos(2πf₁τ)), since 1 − 2A + 2A·cos is zero at both. For 41 and 63 Hz 19.23 ms, where the convolution of two ZV
    // sequences takes 1/82 + 1/126 s = 20.13 ms.
    [Fact]
    public void Two_modes_without_damping()
    {
        ImpulseSequence s = ImpulseSequence.TwoModeZeroVibration(Frequency.FromHertz(41), 0, Frequency.FromHertz(63), 0);
        Assert.Equal(2.0 / 104, s.Duration.Seconds, 1e-14);
        Assert.Equal(1 / (2 - (2 * Math.Cos(2 * Math.PI * 41 / 104))), s.Amplitudes[0], 1e-13);
        Assert.True(s.Duration < ImpulseSequence.ZeroVibration(Frequency.FromHertz(41), 0).Convolve(ImpulseSequence.ZeroVibration(Frequency.FromHertz(63), 0)).Duration);
    }

    private static ModeRange Range(double low, double high, double zeta0, double zeta1) =>
        ModeRange.Between(FrequencyBand.Between(Frequency.FromHertz(low), Frequency.FromHertz(high)), zeta0, zeta1);
}
