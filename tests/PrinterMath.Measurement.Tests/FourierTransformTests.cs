using System.Numerics;

namespace PrinterMath.Measurement.Tests;

public sealed class FourierTransformTests
{
    // The definition itself at 64 lines or all, with angles reduced modulo n in integers. Rounding of the sum grows as the square root of its length: 2e-14 of the largest line.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(8)]
    [InlineData(12)]
    [InlineData(16)]
    [InlineData(31)]
    [InlineData(32)]
    [InlineData(64)]
    [InlineData(100)]
    [InlineData(128)]
    [InlineData(243)]
    [InlineData(256)]
    [InlineData(512)]
    [InlineData(5000)]
    [InlineData(8191)]
    public void Equals_the_sum_that_defines_it(int n)
    {
        var random = new Random(n);
        Complex[] x = [.. Enumerable.Range(0, n).Select(_ => new Complex(random.NextDouble() - 0.5, random.NextDouble() - 0.5))];
        double[] re = [.. x.Select(z => z.Real)], im = [.. x.Select(z => z.Imaginary)], toRe = new double[n], toIm = new double[n];
        new FourierTransform(n).Forward(re, im, toRe, toIm);
        double largest = toRe.Zip(toIm, (a, b) => Math.Sqrt((a * a) + (b * b))).Max();
        for (int k = 0; k < n; k += Math.Max(1, n / 64))
        {
            Complex expected = x.Select((z, j) => z * Complex.FromPolarCoordinates(1, -2 * Math.PI * ((long)j * k % n) / n)).Aggregate(Complex.Zero, (a, b) => a + b);
            Assert.Equal(0, (new Complex(toRe[k], toIm[k]) - expected).Magnitude / largest, 2e-14);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(10)]
    [InlineData(128)]
    [InlineData(1000)]
    [InlineData(2048)]
    public void Inverse_gives_back_n_times_the_sequence(int n)
    {
        var random = new Random(n);
        double[] re = [.. Enumerable.Range(0, n).Select(_ => random.NextDouble())], im = [.. Enumerable.Range(0, n).Select(_ => random.NextDouble())];
        double[] toRe = new double[n], toIm = new double[n], backRe = new double[n], backIm = new double[n];
        var transform = new FourierTransform(n);
        transform.Forward(re, im, toRe, toIm);
        transform.Inverse(toRe, toIm, backRe, backIm);
        for (int j = 0; j < n; j++)
        {
            Assert.Equal(re[j], backRe[j] / n, 1e-14);
            Assert.Equal(im[j], backIm[j] / n, 1e-14);
        }
    }

    [Fact]
    public void Bad_input_is_named()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new FourierTransform(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RealFourierTransform(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FourierTransform((1 << 26) + 1));
        double[] four = new double[4], other = new double[4], third = new double[4], fourth = new double[4];
        var transform = new FourierTransform(4);
        Assert.Throws<ArgumentException>("im", () => transform.Forward(four, new double[3], other, third));
        Assert.Throws<ArgumentException>("toRe", () => transform.Forward(four, other, four, third));
        Assert.Throws<ArgumentException>("toRe", () => transform.Forward(four, other, fourth, fourth));
        var real = new RealFourierTransform(4);
        Assert.Throws<ArgumentException>("x", () => real.Forward(new double[5], new double[3], new double[3]));
        Assert.Throws<ArgumentException>("im", () => real.Forward(four, new double[3], new double[4]));
        Assert.Throws<ArgumentException>("re", () => real.Forward(four, four.AsSpan(0, 3), new double[3]));
    }

    [Fact]
    public void A_power_of_two_allocates_nothing()
    {
        var transform = new RealFourierTransform(256);
        double[] x = new double[256], re = new double[129], im = new double[129];
        Allocation.None(i =>
        {
            x[i % 256] = i;
            transform.Forward(x, re, im);
            return re[1];
        });
    }
}
