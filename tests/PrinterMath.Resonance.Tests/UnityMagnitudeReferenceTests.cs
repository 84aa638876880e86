using UnitsNet;

namespace PrinterMath.Resonance.Tests;

[Trait("Evidence", "Published")]
public sealed class UnityMagnitudeReferenceTests
{
    private static readonly Frequency One = Frequency.FromHertz(1);

    // Times in undamped periods solved with SciPy from C = S = 0 (and its slope); six digits given.
    [Theory]
    [InlineData(0, 0.166667, 0.333333)]
    [InlineData(0.05, 0.181406, 0.333926)]
    [InlineData(0.1, 0.196800, 0.335717)]
    [InlineData(0.2, 0.229902, 0.343118)]
    public void Zero_vibration(double zeta, double second, double third) =>
        HasTimes(ImpulseSequence.UnityMagnitudeZeroVibration(One, zeta), 5.1e-7, second, third);

    [Theory]
    [InlineData(0, 0.089513, 0.366234, 0.642955, 0.732468)]
    [InlineData(0.1, 0.120307, 0.359831, 0.674564, 0.738530)]
    public void Zero_vibration_and_derivative(double zeta, double second, double third, double fourth, double fifth) =>
        HasTimes(ImpulseSequence.UnityMagnitudeZeroVibrationDerivative(One, zeta), 5.1e-7, second, third, fourth, fifth);

    // The published curve fits (Singhose, Singer, Seering 1997, J. Dyn. Syst. Meas. Control 119(2):198-205, coefficients from memory of a carrier): within their own errors,
    // 1e-4 T for UM-ZV and for the others 1e-3 T.
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.1)]
    [InlineData(0.2)]
    public void Published_curve_fits(double z)
    {
        HasTimes(
            ImpulseSequence.UnityMagnitudeZeroVibration(One, z),
            1e-4,
            .16658 + (.29277 * z) + (.075438 * z * z) + (.21335 * z * z * z),
            .33323 + (.0053322 * z) + (.17914 * z * z) + (.20125 * z * z * z));
        HasTimes(
            ImpulseSequence.UnityMagnitudeZeroVibrationDerivative(One, z),
            1e-3,
            .08945 + (.28411 * z) + (.23013 * z * z) + (.16401 * z * z * z),
            .36613 - (.08833 * z) + (.24048 * z * z) + (.17001 * z * z * z),
            .64277 + (.29103 * z) + (.23262 * z * z) + (.43784 * z * z * z),
            .73228 + (.00992 * z) + (.49385 * z * z) + (.38633 * z * z * z));
        HasTimes(
            ImpulseSequence.UnityMagnitudeExtraInsensitive(One, z),
            1e-3,
            .09374 + (.31903 * z) + (.13582 * z * z) + (.65274 * z * z * z),
            .36798 - (.05894 * z) + (.13641 * z * z) + (.63266 * z * z * z),
            .64256 + (.28595 * z) + (.26334 * z * z) + (.24999 * z * z * z),
            .73664 + (.00162 * z) + (.52749 * z * z) + (.19208 * z * z * z));
    }

    // Without damping, by data/unity_magnitude_scipy.py (SciPy 1.10.1); six digits given. UM-ZV evaluated with NumPy, five digits.
    [Theory]
    [InlineData("UM-ZV", 0.05, 0.97220, 1.02734, 5.1e-6)]
    [InlineData("UM-ZVD", 0.05, 0.867097, 1.125654, 5.1e-7)]
    [InlineData("UM-ZVD", 0.10, 0.808627, 1.176525, 5.1e-7)]
    [InlineData("UM-EI", 0.05, 0.813467, 1.172477, 5.1e-7)]
    [InlineData("UM-EI", 0.10, 0.735101, 1.236977, 5.1e-7)]
    public void Undamped_insensitivity(string family, double level, double lower, double upper, double digits)
    {
        ImpulseSequence sequence = family switch
        {
            "UM-ZV" => ImpulseSequence.UnityMagnitudeZeroVibration(One, 0),
            "UM-ZVD" => ImpulseSequence.UnityMagnitudeZeroVibrationDerivative(One, 0),
            _ => ImpulseSequence.UnityMagnitudeExtraInsensitive(One, 0, level),
        };
        Assert.True(sequence.TryGetInsensitiveBand(One, 0, level, out FrequencyBand band));
        Assert.Equal(lower, band.LowerHertz, digits);
        Assert.Equal(upper, band.UpperHertz, digits);
    }

    // Undamped UM-EI at 5 %, by the same script.
    [Fact]
    public void Extra_insensitive() => HasTimes(ImpulseSequence.UnityMagnitudeExtraInsensitive(One, 0), 5.1e-7, 0.094076, 0.368366, 0.642656, 0.736732);

    private static void HasTimes(ImpulseSequence sequence, double tolerance, params double[] later)
    {
        Assert.Equal(later.Length + 1, sequence.Count);
        for (int i = 1; i < sequence.Count; i++)
        {
            Assert.Equal(later[i - 1], sequence.Times[i], tolerance);
            Assert.Equal(i % 2 == 0 ? 1 : -1, sequence.Amplitudes[i]);
        }
    }
}
