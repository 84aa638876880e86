using PrinterMath.Measurement;
using PrinterMath.Resonance;
using PrinterMath.SurfaceMesh;
using UnitsNet;

namespace PrinterMath.Benchmarks;

/// <summary>Invented data for both sides: this process writes them, the Python side reads them.</summary>
public static class Inputs
{
    public const double VibrationRate = 3200;
    public const double AudioRate = 48_000;
    internal const double Side = 0.3;

    /// <summary>A 45 Hz mode, struck every second, in noise.</summary>
    public static double[] Vibration(int count, int seed = 1)
    {
        var random = new Random(seed);
        double[] samples = new double[count];
        for (int n = 0; n < count; n++)
        {
            double t = n % VibrationRate / VibrationRate;
            samples[n] = (3 * Math.Exp(-14 * t) * Math.Sin(2 * Math.PI * 45 * t)) + (0.2 * (random.NextDouble() - 0.5));
        }

        return samples;
    }

    /// <summary>A plucked span: 110 Hz with ten partials that die away.</summary>
    public static double[] Pluck(int count)
    {
        var random = new Random(2);
        double[] samples = new double[count];
        for (int n = 0; n < count; n++)
        {
            double t = (n / AudioRate) - 0.2;
            double sum = 1e-3 * (random.NextDouble() - 0.5);
            for (int k = 1; k <= 10 && t > 0; k++)
            {
                sum += 0.2 / k * Math.Exp(-t * (3 + k)) * Math.Sin(2 * Math.PI * 110 * k * t);
            }

            samples[n] = sum;
        }

        return samples;
    }

    public static SampledSignal Signal(double[] samples, double rate) => SampledSignal.FromSamples(samples, Frequency.FromHertz(rate));

    public static double[] Nodes(int side) => [.. Enumerable.Range(0, side).Select(i => Side * i / (side - 1))];

    /// <summary>A parabola along x and along y, which bicubic splines of either kind reproduce.</summary>
    public static double[] GridHeights(int side) =>
        [.. Nodes(side).SelectMany(y => Nodes(side).Select(x => 1e-4 + (2e-3 * x) - (1e-3 * y) + (3e-3 * x * x) + (2e-3 * x * y) - (4e-3 * y * y)))];

    public static ProbedGrid Grid(int side) => ProbedGrid.FromHeights(Nodes(side), Nodes(side), GridHeights(side));

    public static double[] Places(int count, int seed)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(_ => Side * random.NextDouble())];
    }

    public static ProbePoint[] Points(int side)
    {
        var random = new Random(5);
        return [.. Nodes(side).SelectMany(y => Nodes(side).Select(x => ProbePoint.FromMeters(x, y, (1e-3 * x) - (2e-3 * y) + (1e-3 * x * y) + (1e-5 * (random.NextDouble() - 0.5)))))];
    }

    /// <summary>A thin plate of SciPy's smoothing 10⁻⁴ at 225 points.</summary>
    public static ThinPlateOptions Stiff { get; } = new() { Smoothing = Area.FromSquareMeters(1e-4 / (8 * Math.PI * 225)) };

    public static Mode[] Modes() =>
        [Mode.FromValues(Measured.Of(Frequency.FromHertz(45), Frequency.FromHertz(1)), Measured.Of(0.06, 0.01), Measured.Exact(1.0))];

    /// <summary>A mode so uncertain that its range, 40 Hz to 160 Hz, needs hundreds of spectrum lines.</summary>
    public static Mode[] WideModes() =>
        [Mode.FromValues(Measured.Of(Frequency.FromHertz(100), Frequency.FromHertz(30)), Measured.Of(0.06, 0.02), Measured.Exact(1.0))];
}
