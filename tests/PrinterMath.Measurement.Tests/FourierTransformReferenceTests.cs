using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace PrinterMath.Measurement.Tests;

[Trait("Evidence", "Published")]
public sealed class FourierTransformReferenceTests
{
    // Oracle: MathNet.Numerics 5.0, Fourier.Forward without scaling; 2e-14 of the largest line is 90 roundings. Where the length is no power of two that library itself is
    // good to 1e-11 only (3.4e-13 at 5000 points against summation, ours 7e-16).
    [Theory]
    [InlineData(2048, 2e-14)]
    [InlineData(4096, 2e-14)]
    [InlineData(5000, 1e-11)]
    [InlineData(65_536, 2e-14)]
    public void Real_sequences_against_another_library(int n, double tolerance)
    {
        var random = new Random(n);
        double[] x = [.. Enumerable.Range(0, n).Select(_ => random.NextDouble() - 0.5)];
        var transform = new RealFourierTransform(n);
        double[] re = new double[transform.Bins], im = new double[transform.Bins];
        transform.Forward(x, re, im);
        Complex[] expected = [.. x.Select(v => new Complex(v, 0))];
        Fourier.Forward(expected, FourierOptions.NoScaling);
        double largest = expected.Max(z => z.Magnitude);
        for (int k = 0; k < transform.Bins; k++)
        {
            Assert.Equal(0, (new Complex(re[k], im[k]) - expected[k]).Magnitude / largest, tolerance);
        }
    }
}
