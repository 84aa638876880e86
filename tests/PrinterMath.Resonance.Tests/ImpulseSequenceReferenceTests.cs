using UnitsNet;

namespace PrinterMath.Resonance.Tests;

[Trait("Evidence", "Published")]
public sealed class ImpulseSequenceReferenceTests
{
    private static readonly Frequency One = Frequency.FromHertz(1);

    // Amplitudes K^i·C(k, i) of Singer and Seering 1990 (J. Dyn. Syst. Meas. Control 112(1):76-82, from memory), evaluated with NumPy; six digits given.
    [Theory]
    [InlineData(0.05, 1, new[] { 0.539238, 0.460762 })]
    [InlineData(0.1, 1, new[] { 0.578286, 0.421714 })]
    [InlineData(0.2, 1, new[] { 0.655042, 0.344958 })]
    [InlineData(0, 2, new[] { 0.25, 0.5, 0.25 })]
    [InlineData(0.05, 2, new[] { 0.290778, 0.496921, 0.212301 })]
    [InlineData(0.15, 2, new[] { 0.380630, 0.472644, 0.146726 })]
    [InlineData(0, 3, new[] { 0.125, 0.375, 0.375, 0.125 })]
    [InlineData(0.1, 3, new[] { 0.193388, 0.423082, 0.308532, 0.074999 })]
    [InlineData(0.2, 3, new[] { 0.281065, 0.444044, 0.233843, 0.041049 })]
    [InlineData(0.1, 4, new[] { 0.111833, 0.326217, 0.356839, 0.173483, 0.031628 })]
    public void Zero_vibration_amplitudes(double zeta, int pairs, double[] expected)
    {
        ImpulseSequence sequence = ImpulseSequence.ZeroVibrationDerivative(One, zeta, pairs - 1);
        Assert.Equal(expected.Length, sequence.Count);
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], sequence.Amplitudes[i], 5.1e-7);
        }
    }

    // Half a damped period in undamped periods, 1/(2√(1 − ζ²)); six digits given.
    [Theory]
    [InlineData(0.05, 0.500626)]
    [InlineData(0.1, 0.502519)]
    [InlineData(0.15, 0.505722)]
    [InlineData(0.2, 0.510310)]
    public void Half_a_damped_period(double zeta, double expected) =>
        Assert.Equal(expected, ImpulseSequence.ZeroVibration(One, zeta).Duration.Seconds, 5.1e-7);

    // Closed forms at ζ = 0: I = (4/π)·asin(V^(1/k)) for k zero-vibration pairs. For EI the amplitudes are a Dolph-Chebyshev window (Dolph 1946, Proc. IRE 34:335-348, from
    // memory), so I = (4/π)·asin(1/cosh(acosh(1/V)/2)). The band is 1 ± I/2.
    [Theory]
    [InlineData(1, 0.05, 0.063689)]
    [InlineData(1, 0.10, 0.127537)]
    [InlineData(2, 0.05, 0.287133)]
    [InlineData(2, 0.10, 0.409666)]
    [InlineData(3, 0.05, 0.480382)]
    [InlineData(3, 0.10, 0.614573)]
    [InlineData(4, 0.05, 0.627129)]
    [InlineData(4, 0.10, 0.760397)]
    public void Undamped_insensitivity_of_zero_vibration(int pairs, double level, double printed)
    {
        double closed = 4 / Math.PI * Math.Asin(Math.Pow(level, 1.0 / pairs));
        Assert.Equal(printed, closed, 5.1e-7);
        Assert.True(ImpulseSequence.ZeroVibrationDerivative(One, 0, pairs - 1).TryGetInsensitiveBand(One, 0, level, out FrequencyBand band));
        Assert.Equal(1 - (closed / 2), band.LowerHertz, 1e-12);
        Assert.Equal(1 + (closed / 2), band.UpperHertz, 1e-12);
    }

    [Theory]
    [InlineData(0.05, 0.399451, 0.80027, 1.19973)]
    [InlineData(0.10, 0.560876, 0.71956, 1.28044)]
    public void Undamped_insensitivity_of_extra_insensitive(double tolerance, double printed, double lower, double upper)
    {
        double closed = 4 / Math.PI * Math.Asin(1 / Math.Cosh(Math.Acosh(1 / tolerance) / 2));
        Assert.Equal(printed, closed, 5.1e-7);
        Assert.True(ImpulseSequence.ExtraInsensitive(One, 0, tolerance).TryGetInsensitiveBand(One, 0, tolerance, out FrequencyBand band));
        Assert.Equal(lower, band.LowerHertz, 5.1e-6);
        Assert.Equal(upper, band.UpperHertz, 5.1e-6);
        Assert.Equal(closed, band.UpperHertz - band.LowerHertz, 1e-9);
    }

    // Insensitivity with the damping ratio held fixed, evaluated with NumPy from the residual ratio of Singer and Seering 1990; five digits given.
    [Theory]
    [InlineData(0.05, 1, 0.05, 0.06903)]
    [InlineData(0.05, 2, 0.05, 0.31173)]
    [InlineData(0.1, 1, 0.1, 0.15058)]
    [InlineData(0.1, 3, 0.1, 0.74256)]
    [InlineData(0.15, 2, 0.1, 0.53874)]
    [InlineData(0.2, 4, 0.05, 0.99932)]
    public void Damped_insensitivity(double zeta, int pairs, double level, double expected)
    {
        Assert.True(ImpulseSequence.ZeroVibrationDerivative(One, zeta, pairs - 1).TryGetInsensitiveBand(One, zeta, level, out FrequencyBand band));
        Assert.Equal(expected, band.UpperHertz - band.LowerHertz, 1.1e-5);
    }

    // The Dolph-Chebyshev window of three points, w(0), w(1), w(0), from its definition W(θ) ∝ T₂(x₀·cos(θ/2)), x₀ = cosh(acosh(1/V)/2):
    // T₂(y) = 2y² − 1 and cos²(θ/2) = (1 + cos θ)/2 give side weights x₀²/2 and centre weight x₀² − 1, over their sum.
    [Theory]
    [InlineData(0.01)]
    [InlineData(0.025)]
    [InlineData(0.05)]
    [InlineData(0.1)]
    public void Undamped_extra_insensitive_is_a_Dolph_Chebyshev_window(double tolerance)
    {
        double x = Math.Pow(Math.Cosh(Math.Acosh(1 / tolerance) / 2), 2);
        double sum = (2 * x) - 1;
        ImpulseSequence sequence = ImpulseSequence.ExtraInsensitive(One, 0, tolerance);
        Assert.Equal(x / 2 / sum, sequence.Amplitudes[0], 1e-14);
        Assert.Equal((x - 1) / sum, sequence.Amplitudes[1], 1e-14);
        Assert.Equal(x / 2 / sum, sequence.Amplitudes[2], 1e-14);
    }

    // The five equations solved with SciPy, V = 0.05; six digits of amplitudes and times, four of the zeros, five of the outer edges.
    [Theory]
    [InlineData(0.05, 0.306763, 0.467646, 0.225591, 0.502579, 0.8487, 1.1514, 0.78571, 1.21813)]
    [InlineData(0.1, 0.354726, 0.453400, 0.191875, 0.507213, 0.8359, 1.1642, 0.76954, 1.23969)]
    [InlineData(0.15, 0.406293, 0.432274, 0.161433, 0.514321, 0.8214, 1.1790, 0.75150, 1.26544)]
    [InlineData(0.2, 0.461328, 0.404388, 0.134283, 0.524565, 0.8049, 1.1961, 0.73135, 1.29690)]
    public void Damped_extra_insensitive(double zeta, double a1, double a2, double a3, double t2, double zeroBelow, double zeroAbove, double edgeBelow, double edgeAbove)
    {
        ImpulseSequence s = ImpulseSequence.ExtraInsensitive(One, zeta, 0.05);
        Assert.Equal(a1, s.Amplitudes[0], 5.1e-7);
        Assert.Equal(a2, s.Amplitudes[1], 5.1e-7);
        Assert.Equal(a3, s.Amplitudes[2], 5.1e-7);
        Assert.Equal(t2, s.Times[1], 5.1e-7);
        Assert.Equal(1 / Math.Sqrt(1 - (zeta * zeta)), s.Times[2], 1e-15);
        Assert.Equal(0.05, s.ResidualVibration(One, zeta), 1e-12);

        // Slope of V at a zero is below 1 per unit of r: four digits of r leave at most 5e-5.
        Assert.Equal(0, s.ResidualVibration(Frequency.FromHertz(zeroBelow), zeta), 6e-5);
        Assert.Equal(0, s.ResidualVibration(Frequency.FromHertz(zeroAbove), zeta), 6e-5);
        Assert.Equal(0.05, s.ResidualVibration(Frequency.FromHertz(edgeBelow), zeta), 1e-5);
        Assert.Equal(0.05, s.ResidualVibration(Frequency.FromHertz(edgeAbove), zeta), 1e-5);
    }

    // The published curve fit (Singhose, Seering, Singer 1994, J. Mech. Design 116(2):654-659, coefficients from memory of a carrier): within its own error of 6.3e-4.
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.1)]
    [InlineData(0.2)]
    public void Damped_extra_insensitive_agrees_with_the_published_curve_fit(double z)
    {
        const double V = 0.05;
        ImpulseSequence s = ImpulseSequence.ExtraInsensitive(One, z, V);
        Assert.Equal(.249684 + (.249623 * V) + (.800081 * z) + (1.23328 * V * z) + (.495987 * z * z) + (3.17316 * V * z * z), s.Amplitudes[0], 6.3e-4);
        Assert.Equal(.251489 + (.21474 * V) - (.832493 * z) + (1.41498 * V * z) + (.851806 * z * z) - (4.90094 * V * z * z), s.Amplitudes[2], 6.3e-4);
    }

    // Moments in undamped periods, evaluated with NumPy; six digits given (undamped ones exact).
    [Theory]
    [InlineData("ZV", 0, 0.25, 0.0625)]
    [InlineData("ZVD", 0, 0.5, 0.125)]
    [InlineData("ZVDD", 0, 0.75, 0.1875)]
    [InlineData("EI", 0, 0.5, 0.131250)]
    [InlineData("ZV", 0.1, 0.211919, 0.061584)]
    [InlineData("ZVD", 0.1, 0.423838, 0.123167)]
    [InlineData("ZVDD", 0.1, 0.635758, 0.184751)]
    public void Moments(string family, double zeta, double mean, double variance)
    {
        ImpulseSequence sequence = Make(family, One, zeta);
        Assert.Equal(mean, sequence.MeanDelay.Seconds, 6e-7);
        Assert.Equal(variance, sequence.VarianceSquareSeconds, 6e-7);
    }

    // The stricter damped form (last impulse free, slope zero at the design; solved with SciPy for ζ = 0.1, six digits): its moments are 0.421082 and 0.130606 periods.
    // Rounded amplitudes and times leave 1e-6.
    [Fact]
    public void Moments_of_a_given_sequence()
    {
        ImpulseSequence sequence = ImpulseSequence.FromImpulses([0, 0.505134, 1.000925], [0.354713, 0.453421, 0.191866]);
        Assert.Equal(0.421082, sequence.MeanDelay.Seconds, 1.5e-6);
        Assert.Equal(0.130606, sequence.VarianceSquareSeconds, 1.5e-6);
    }

    // At 50 Hz and 3000 mm/s² the deviation a·var/2 is 0.0375 mm for ZV and 0.0750 mm for ZVD (exact: 3·(0.02²/16)/2 m).
    [Theory]
    [InlineData("ZV", 0.0375)]
    [InlineData("ZVD", 0.0750)]
    public void Deviation_under_acceleration(string family, double millimeters)
    {
        ImpulseSequence sequence = Make(family, Frequency.FromHertz(50), 0);
        Acceleration acceleration = Acceleration.FromMillimetersPerSecondSquared(3000);
        Assert.Equal(millimeters, AllowedAcceleration.DeviationAt(sequence, acceleration).Millimeters, 1e-12);
        Assert.Equal(3000, AllowedAcceleration.ForDeviation(sequence, Length.FromMillimeters(millimeters)).MillimetersPerSecondSquared, 1e-8);
    }

    // Corner of 90° at 100 mm/s, 50 Hz: the cut v·MAD·sin(45°) is 0.353553 mm for ZV and ZVD, 0.530330 for ZVDD, 0.371231 for EI (six digits).
    [Theory]
    [InlineData("ZV", 0.353553)]
    [InlineData("ZVD", 0.353553)]
    [InlineData("ZVDD", 0.530330)]
    [InlineData("EI", 0.371231)]
    public void Corner_cut_by_mean_absolute_deviation(string family, double millimeters) =>
        Assert.Equal(millimeters, 100 * Make(family, Frequency.FromHertz(50), 0).MeanAbsoluteDeviation.Seconds * Math.Sqrt(0.5), 5.1e-7);

    internal static ImpulseSequence Make(string family, Frequency frequency, double zeta) => family switch
    {
        "ZV" => ImpulseSequence.ZeroVibration(frequency, zeta),
        "ZVD" => ImpulseSequence.ZeroVibrationDerivative(frequency, zeta),
        "ZVDD" => ImpulseSequence.ZeroVibrationDerivative(frequency, zeta, 2),
        _ => ImpulseSequence.ExtraInsensitive(frequency, zeta),
    };
}
