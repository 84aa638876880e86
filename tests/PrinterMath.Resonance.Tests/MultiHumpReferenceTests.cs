using System.Globalization;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

[Trait("Evidence", "Published")]
public sealed class MultiHumpReferenceTests
{
    private static readonly Frequency One = Frequency.FromHertz(1);

    // SciPy 1.10.1, scipy.signal.windows.chebwin, by data/chebyshev_scipy.py: an independent form of the undamped sequences. It works by transforms, which leave 1e-13.
    [Fact]
    public void Undamped_sequences_are_Dolph_Chebyshev_windows()
    {
        foreach (string line in File.ReadLines(DataFile.Path("chebyshev_scipy.csv")).Where(line => line[0] != '#'))
        {
            double[] row = [.. line.Split(',').Select(text => double.Parse(text, CultureInfo.InvariantCulture))];
            ImpulseSequence sequence = ImpulseSequence.MultiHumpExtraInsensitive(One, 0, (int)row[0], row[1]);
            Assert.Equal(row.Length - 2, sequence.Count);
            for (int i = 0; i < sequence.Count; i++)
            {
                Assert.Equal(row[i + 2], sequence.Amplitudes[i], 1e-12);
                Assert.Equal(i / 2.0, sequence.Times[i], 1e-12);
            }
        }
    }

    // The published undamped forms of two and three humps (Singhose, Porter, Tuttle, Singer 1997, J. Dyn. Syst. Meas. Control 119(2):320-326, from memory).
    [Theory]
    [InlineData(0.01)]
    [InlineData(0.05)]
    [InlineData(0.1)]
    public void Undamped_closed_forms(double v)
    {
        double x = Math.Cbrt(v * v * (Math.Sqrt(1 - (v * v)) + 1));
        Assert.Equal(((3 * x * x) + (2 * x) + (3 * v * v)) / (16 * x), ImpulseSequence.MultiHumpExtraInsensitive(One, 0, 2, v).Amplitudes[0], 1e-13);
        ImpulseSequence three = ImpulseSequence.MultiHumpExtraInsensitive(One, 0, 3, v);
        Assert.Equal((1 + (3 * v) + (2 * Math.Sqrt(2 * ((v * v) + v)))) / 16, three.Amplitudes[0], 1e-13);
        Assert.Equal((1 - v) / 4, three.Amplitudes[1], 1e-13);
    }

    // Damped constraints solved with SciPy (least squares, residual below 4e-13), V = 0.05; six digits of amplitudes and times, five of the ends of the band.
    [Theory]
    [InlineData(1, 0.05, "0.306760 0.467650 0.225589", "0.501696 0.999494", 0.78710, 1.22026)]
    [InlineData(1, 0.1, "0.354713 0.453421 0.191866", "0.505134 1.000925", 0.77273, 1.24475)]
    [InlineData(1, 0.15, "0.406251 0.432340 0.161409", "0.510608 1.004171", 0.75704, 1.27451)]
    [InlineData(1, 0.2, "0.461220 0.404549 0.134231", "0.518598 1.009112", 0.73991, 1.31148)]
    [InlineData(2, 0.05, "0.204864 0.354742 0.308057 0.132337", "0.505780 1.002193 1.493625", 0.61878, 1.40545)]
    [InlineData(2, 0.1, "0.258704 0.360104 0.272358 0.108834", "0.515920 1.007956 1.488879", 0.59892, 1.45861)]
    [InlineData(2, 0.15, "0.321969 0.355176 0.233938 0.088917", "0.532520 1.018576 1.485649", 0.57815, 1.52628)]
    [InlineData(2, 0.2, "0.394635 0.340028 0.193246 0.072091", "0.559099 1.036957 1.484345", 0.55644, 1.61762)]
    [InlineData(3, 0.05, "0.159300 0.261490 0.285088 0.202137 0.091984", "0.514264 1.009628 1.500204 1.984397", 0.49743, 1.54583)]
    [InlineData(3, 0.1, "0.220597 0.277557 0.259830 0.166880 0.075137", "0.540642 1.029110 1.506816 1.970894", 0.47635, 1.62774)]
    [InlineData(3, 0.15, "0.297051 0.286817 0.223648 0.131419 0.061065", "0.587478 1.068316 1.525810 1.961470", 0.45475, 1.74353)]
    [InlineData(3, 0.2, "0.385676 0.295406 0.177684 0.092901 0.048334", "0.665044 1.152697 1.577083 1.962322", 0.43216, 1.96975)]
    public void Damped_sequences(int humps, double zeta, string amplitudes, string times, double lower, double upper)
    {
        ImpulseSequence sequence = ImpulseSequence.MultiHumpExtraInsensitive(One, zeta, humps);
        double[] a = Numbers(amplitudes), t = [0, .. Numbers(times)];
        for (int i = 0; i < sequence.Count; i++)
        {
            Assert.Equal(a[i], sequence.Amplitudes[i], 5.1e-7);
            Assert.Equal(t[i], sequence.Times[i], 5.1e-7);
        }

        Assert.True(sequence.TryGetInsensitiveBand(One, zeta, 0.05, out FrequencyBand band));
        Assert.Equal(lower, band.LowerHertz, 5.1e-6);
        Assert.Equal(upper, band.UpperHertz, 5.1e-6);
    }

    // The published curve fit for two humps at V = 5 % (coefficients from memory of a carrier, amplitudes; times in undamped periods): 2e-3 is its own error,
    // largest in the third time at ζ = 0.05: over the exact band it leaves up to 5.3 %.
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.1)]
    [InlineData(0.2)]
    public void Two_humps_agree_with_the_published_curve_fit(double z)
    {
        ImpulseSequence s = ImpulseSequence.MultiHumpExtraInsensitive(One, z, 2);
        Assert.Equal(.16054 + (.76699 * z) + (2.2656 * z * z) - (1.2275 * z * z * z), s.Amplitudes[0], 2e-3);
        Assert.Equal(.33911 + (.45081 * z) - (2.5808 * z * z) + (1.7365 * z * z * z), s.Amplitudes[1], 2e-3);
        Assert.Equal(.34089 - (.61533 * z) - (.68765 * z * z) + (.42261 * z * z * z), s.Amplitudes[2], 2e-3);
        Assert.Equal(.4989 + (.1627 * z) - (.54262 * z * z) + (6.1618 * z * z * z), s.Times[1], 2e-3);
        Assert.Equal(.99748 + (.18382 * z) - (1.5827 * z * z) + (8.1712 * z * z * z), s.Times[2], 2e-3);
        Assert.Equal(1.4992 - (.09297 * z) - (.28338 * z * z) + (1.8571 * z * z * z), s.Times[3], 2e-3);
    }

    // I_n(V) = (4/π)·asin(1/cosh(acosh(1/V)/n)), n = humps + 1: width of the band of a Dolph-Chebyshev window; six digits printed.
    [Theory]
    [InlineData(1, 0.05, 0.399451)]
    [InlineData(2, 0.05, 0.724544)]
    [InlineData(3, 0.05, 0.963893)]
    [InlineData(4, 0.05, 1.135947)]
    [InlineData(2, 0.10, 0.899534)]
    [InlineData(3, 0.10, 1.125422)]
    public void Undamped_insensitivity(int humps, double level, double printed)
    {
        Assert.Equal(printed, 4 / Math.PI * Math.Asin(1 / Math.Cosh(Math.Acosh(1 / level) / (humps + 1))), 5.1e-7);
        Assert.True(ImpulseSequence.MultiHumpExtraInsensitive(One, 0, humps, level).TryGetInsensitiveBand(One, 0, level, out FrequencyBand band));
        Assert.Equal(printed, band.UpperHertz - band.LowerHertz, 5.1e-7);
    }

    // Moments in undamped periods and what they cut off a corner of 90° at 100 mm/s, 50 Hz, evaluated with NumPy; six digits given.
    [Theory]
    [InlineData(2, 0, 0.75, 0.222297)]
    [InlineData(3, 0, 1, 0.343509)]
    [InlineData(1, 0.1, 0.421082, 0.130606)]
    [InlineData(2, 0.1, 0.622350, 0.226498)]
    [InlineData(3, 0.1, 0.816996, 0.359586)]
    public void Moments(int humps, double zeta, double mean, double variance)
    {
        ImpulseSequence sequence = ImpulseSequence.MultiHumpExtraInsensitive(One, zeta, humps);
        Assert.Equal(mean, sequence.MeanDelay.Seconds, 6e-7);
        Assert.Equal(variance, sequence.VarianceSquareSeconds, 6e-7);
    }

    private static double[] Numbers(string text) => [.. text.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture))];
}
