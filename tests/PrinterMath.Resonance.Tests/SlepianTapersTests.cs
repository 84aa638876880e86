using System.Globalization;

namespace PrinterMath.Resonance.Tests;

public sealed class SlepianTapersTests
{
    // SciPy 1.10.1, scipy.signal.windows.dpss, by data/multitaper_numpy.py; its eigenvectors are good to about 1e-12.
    [Fact]
    [Trait("Evidence", "Published")]
    public void Equal_SciPy()
    {
        var tapers = SlepianTapers.Of(64, 2.5, 5);
        foreach (string[] cells in File.ReadLines(DataFile.Path("slepian_scipy.csv")).Skip(1).Select(line => line.Split(',')))
        {
            double expected = double.Parse(cells[2], CultureInfo.InvariantCulture);
            Assert.Equal(expected, tapers.Taper(int.Parse(cells[0], CultureInfo.InvariantCulture))[int.Parse(cells[1], CultureInfo.InvariantCulture)], 1e-11);
        }
    }

    // Concentrations by SciPy's dpss of 512 samples, eight digits printed; Thomson 1982, Proc. IEEE 70(9), 1055-1096, defines them.
    [Theory]
    [InlineData(4, new[] { 1, 0.99999997, 0.99999879, 0.99996759, 0.99941049, 0.99250772, 0.93666493, 0.69884877 })]
    [InlineData(2.5, new[] { 0.99999719, 0.99984306, 0.99621621, 0.95212938, 0.71389100 })]
    [Trait("Evidence", "Published")]
    public void Concentrations_as_known(double timeBandwidth, double[] expected)
    {
        var tapers = SlepianTapers.Of(512, timeBandwidth, expected.Length);
        for (int k = 0; k < expected.Length; k++)
        {
            Assert.Equal(expected[k], tapers.Concentrations[k], 6e-9);
        }
    }

    // Orthonormal to rounding, also where the matrix itself has entries of 1e9 and neighbouring eigenvalues a billion times closer.
    [Theory]
    [InlineData(8, 1.5, 3)]
    [InlineData(501, 3, 6)]
    [InlineData(60_000, 4, 8)]
    [InlineData(4096, 40, 80)]
    public void Are_orthonormal(int length, double timeBandwidth, int count)
    {
        var tapers = SlepianTapers.Of(length, timeBandwidth, count);
        for (int j = 0; j < count; j++)
        {
            for (int k = j; k < count; k++)
            {
                double product = 0;
                for (int i = 0; i < length; i++)
                {
                    product += tapers.Taper(j)[i] * tapers.Taper(k)[i];
                }

                Assert.Equal(j == k ? 1 : 0, product, 1e-10);
            }
        }
    }

    [Theory]
    [InlineData(64)]
    [InlineData(65)]
    public void Even_ones_are_symmetric_and_odd_ones_antisymmetric(int length)
    {
        var tapers = SlepianTapers.Of(length, 3, 5);
        for (int k = 0; k < 5; k++)
        {
            ReadOnlySpan<double> taper = tapers.Taper(k);
            for (int i = 0; i < length; i++)
            {
                Assert.Equal((k % 2 == 0 ? 1 : -1) * taper[length - 1 - i], taper[i], 1e-12);
            }
        }
    }

    [Fact]
    public void Concentrations_fall()
    {
        var tapers = SlepianTapers.Of(300, 6, 12);
        for (int k = 1; k < 12; k++)
        {
            Assert.True(tapers.Concentrations[k] <= tapers.Concentrations[k - 1] + 1e-13);
        }
    }

    [Theory]
    [InlineData(7, 1.5, 1, "length")]
    [InlineData(100, 0.9, 1, "timeBandwidth")]
    [InlineData(100, double.NaN, 1, "timeBandwidth")]
    [InlineData(100, 26, 1, "timeBandwidth")]
    [InlineData(100, 4, 0, "count")]
    [InlineData(100, 4, 9, "count")]
    public void Bad_arguments_are_refused(int length, double timeBandwidth, int count, string name) =>
        Assert.Equal(name, Assert.Throws<ArgumentOutOfRangeException>(() => SlepianTapers.Of(length, timeBandwidth, count)).ParamName);

    [Fact]
    public void No_taper_beyond_the_last() => Assert.Throws<ArgumentOutOfRangeException>(() => SlepianTapers.Of(64, 2, 3).Taper(3).Length);
}
