using MathNet.Numerics.Distributions;

namespace PrinterMath.SurfaceMesh;

/// <summary>Simulated noise of one probing after another; where the repeatability is known with ν degrees of freedom its scale varies as √(ν/χ²).</summary>
internal sealed class ProbingDraws(int seed, PointNoise noise)
{
    private readonly Random _random = new(seed);

    internal void Fill(Span<double> errors)
    {
        double scale = noise.DegreesOfFreedom > 1e6 ? 1 : Math.Sqrt(noise.DegreesOfFreedom / ChiSquared.InvCDF(noise.DegreesOfFreedom, 1 - _random.NextDouble()));
        for (int k = 0; k < errors.Length; k += 2)
        {
            // Box and Muller's transform, both numbers.
            double radius = scale * Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble()));
            (double sine, double cosine) = Math.SinCos(2 * Math.PI * _random.NextDouble());
            errors[k] = radius * cosine * noise.StandardUncertainties[k];
            if (k + 1 < errors.Length)
            {
                errors[k + 1] = radius * sine * noise.StandardUncertainties[k + 1];
            }
        }
    }
}
