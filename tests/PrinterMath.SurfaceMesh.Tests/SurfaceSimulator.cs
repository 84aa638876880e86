using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh.Tests;

/// <summary>Invented surfaces of 300 mm by 300 mm and probes that read them. Shares no formula with the package.</summary>
public sealed class SurfaceSimulator(int seed)
{
    public const double Side = 0.3;
    private readonly Random _random = new(seed);

    /// <summary>Height in metres for a surface whose features are about 0.1 mm high.</summary>
    public static double Height(string kind, double x, double y)
    {
        double a = x / Side, b = y / Side;
        return kind switch
        {
            "plane" => 5e-3 + (2e-4 * a) - (1e-4 * b),
            "bowl" => 1e-4 * (4 * (((a - 0.5) * (a - 0.5)) + ((b - 0.5) * (b - 0.5))) - (0.5 * a)),
            "saddle" => (1e-4 * (2 * (a - 0.5)) * (2 * (b - 0.4))) + (3e-4 * a),
            "ridge" => 1e-4 * Math.Exp(-Math.Pow((a - (0.3 + (0.4 * b))) / 0.15, 2)),
            "dent" => -1e-4 * Math.Exp(-(Math.Pow(a - 0.25, 2) + Math.Pow(b - 0.5, 2)) / 0.004),
            "waves" => 5e-5 * Math.Sin(9 * a) * Math.Cos(7 * b),
            "faint" => 1.5e-5 * Math.Cos(6 * (a + b)),
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };
    }

    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    /// <summary>Zero mean, unit variance, three points: a coarse switch that trips early, in place, or late.</summary>
    public double Coarse() => _random.Next(4) switch { 0 => -Math.Sqrt(2), 1 => Math.Sqrt(2), _ => 0 };

    public double Uniform() => _random.NextDouble();

    public ProbePoint[] Probe(string kind, int columns, int rows, double noise, bool stated = false, bool coarse = false)
    {
        var points = new ProbePoint[columns * rows];
        for (int k = 0; k < points.Length; k++)
        {
            double x = Side * (k % columns) / (columns - 1), y = Side * (k / columns) / (rows - 1);
            points[k] = ProbePoint.FromMeters(x, y, Height(kind, x, y) + (noise * (coarse ? Coarse() : Normal())), stated ? noise : 0);
        }

        return points;
    }

    /// <summary>Peak-to-valley of the noiseless heights about their plane: on a full grid x, y and 1 are orthogonal once centred.</summary>
    public static double TruePeakToValley(string kind, int columns, int rows)
    {
        double mean = 0, slopeX = 0, slopeY = 0, squareX = 0, squareY = 0;
        int n = columns * rows;
        double[] z = new double[n];
        for (int k = 0; k < n; k++)
        {
            double x = (k % columns) - ((columns - 1) / 2.0), y = (k / columns) - ((rows - 1) / 2.0);
            z[k] = Height(kind, Side * (k % columns) / (columns - 1), Side * (k / columns) / (rows - 1));
            mean += z[k] / n;
            slopeX += x * z[k];
            slopeY += y * z[k];
            squareX += x * x;
            squareY += y * y;
        }

        double high = double.NegativeInfinity, low = double.PositiveInfinity;
        for (int k = 0; k < n; k++)
        {
            double x = (k % columns) - ((columns - 1) / 2.0), y = (k / columns) - ((rows - 1) / 2.0);
            double left = z[k] - mean - (slopeX / squareX * x) - (slopeY / squareY * y);
            high = Math.Max(high, left);
            low = Math.Min(low, left);
        }

        return high - low;
    }
}
