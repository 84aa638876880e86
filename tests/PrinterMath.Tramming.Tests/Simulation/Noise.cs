namespace PrinterMath.Tramming.Tests.Simulation;

/// <summary>Random readings with a given standard deviation.</summary>
internal sealed class Noise(int seed, NoiseKind kind, double standardDeviation)
{
    private readonly Random _random = new(seed);

    internal double Next()
    {
        double u = 1 - _random.NextDouble();
        return standardDeviation * kind switch
        {
            NoiseKind.Normal => Math.Sqrt(-2 * Math.Log(u)) * Math.Cos(2 * Math.PI * _random.NextDouble()),
            NoiseKind.Laplace => -Math.Log(u) / Math.Sqrt(2) * (_random.Next(2) == 0 ? 1 : -1),
            _ => Math.Sqrt(3) * ((2 * u) - 1),
        };
    }
}
