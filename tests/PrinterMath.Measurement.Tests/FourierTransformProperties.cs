using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace PrinterMath.Measurement.Tests;

public sealed class FourierTransformProperties
{
    // Parseval: Σ|X_k|² = n·Σ|x_j|². Shift: X of x delayed by d turns by exp(−2πi·kd/n), so powers stay. Rounding of sums of up to 600 terms.
    [Property(MaxTest = 200)]
    public Property Power_is_kept_and_does_not_know_a_delay(PositiveInt length, int seed, NonNegativeInt delay)
    {
        int n = 1 + (length.Get % 600), d = delay.Get % n;
        var random = new Random(seed);
        double[] x = [.. Enumerable.Range(0, n).Select(_ => random.NextDouble() - 0.5)];
        double[] power = Powers(x), delayed = Powers([.. x[d..], .. x[..d]]);
        double total = power.Select((p, k) => k == 0 || 2 * k == n ? p : 2 * p).Sum(), energy = n * x.Sum(v => v * v);
        return (Math.Abs(total - energy) <= 1e-13 * energy).Label("Parseval")
            .And(power.Zip(delayed).All(pair => Math.Abs(pair.First - pair.Second) <= 1e-12 * energy).Label("delay"));
    }

    private static double[] Powers(double[] x)
    {
        var transform = new RealFourierTransform(x.Length);
        double[] re = new double[transform.Bins], im = new double[transform.Bins];
        transform.Forward(x, re, im);
        return [.. re.Zip(im, (a, b) => (a * a) + (b * b))];
    }
}
