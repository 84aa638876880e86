using MathNet.Numerics.Distributions;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>
/// The size of a shape at which simulated noise makes the value that was read: as likely exceeded as not (estimate), or at the edge of likelihood (limits). Parametric bootstrap
/// with test inversion: Efron, Tibshirani 1993, An Introduction to the Bootstrap, chapters 12 and 21 (from memory).
/// </summary>
/// <remarks>
/// The shape is not known, so extremes of what it may be share the work: the residuals as read (noise included), the touching points alone (noise adds least), and two
/// plateaus (noise adds most). The upper limit is the outer one, the estimate the mean; the lower limit holds for any shape. A measure T is a seminorm: T(e + k·s) is convex in k with slope one in the end, so that each trial
/// has one size at which it shows the value read. A value below the median of noise alone is inverted as that median: readings that happen to lie better than the noise allows prove no
/// flatness beyond it (power-constrained limit: Cowan, Cranmer, Gross, Vitells 2011, arXiv:1105.3166, from memory).
/// </remarks>
internal sealed class NoiseInversion
{
    /// <summary>Sizes are found to this part of the largest noise.</summary>
    private const double Resolution = 1e-4;

    private NoiseInversion(double estimate, double lower, double upper, double coverage)
    {
        Lower = lower;
        Upper = upper;
        double u = Math.Max(upper - estimate, estimate - lower) / Normal.InvCDF(0, 1, (1 + coverage) / 2);
        Corrected = Measured<Length>.FromSi(estimate, u);
    }

    internal Measured<Length> Corrected { get; }

    internal double Lower { get; }

    internal double Upper { get; }

    /// <param name="read">The value as read.</param>
    /// <param name="shapes">Shapes, each of size one by the measure.</param>
    /// <param name="noise">Residuals of simulated noise alone, one array for each trial.</param>
    /// <param name="measure">The measure of flatness.</param>
    /// <param name="coverage">Coverage of the limits.</param>
    internal static NoiseInversion Of(double read, IReadOnlyList<double[]> shapes, double[][] noise, FlatnessMeasure measure, double coverage)
    {
        double tail = (1 - coverage) / 2;
        double[] single = [.. noise.Select(measure.Of)];
        double[] alone = [.. single];
        Array.Sort(alone);
        double raw = Math.Max(read, alone[(alone.Length - 1) / 2]);
        double resolution = Resolution * alone[^1];
        double estimate = 0, lower = 0, upper = 0;
        double[] sizes = new double[noise.Length];
        foreach (double[] shape in shapes)
        {
            double size = 0;
            for (int t = 0; t < noise.Length; t++)
            {
                sizes[t] = single[t] >= raw ? 0 : size = measure.SizeAt(noise[t], single[t], shape, raw, size, resolution);
            }

            Array.Sort(sizes);
            estimate += At(0.5) / shapes.Count;
            lower = At(tail);
            upper = Math.Max(upper, At(1 - tail));
        }

        // T(true) >= T(read) - T(noise) whatever the shape; the root mean square needs no shape, its one inversion is exact.
        double sure = Math.Max(0, read - alone[Math.Clamp((int)Math.Ceiling((1 - tail) * alone.Length) - 1, 0, alone.Length - 1)]);
        return new NoiseInversion(estimate, shapes.Count == 1 ? lower : sure, upper, coverage);

        double At(double chance) => sizes[Math.Clamp((int)Math.Ceiling(chance * sizes.Length) - 1, 0, sizes.Length - 1)];
    }
}
