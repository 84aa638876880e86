namespace PrinterMath.Extrusion.Tests;

/// <summary>An invented workshop: it makes readings from planted truths, with formulas of its own.</summary>
internal sealed class Workshop(int seed)
{
    private readonly Random _random = new(seed);

    internal double Uniform(double low, double high) => low + ((high - low) * _random.NextDouble());

    internal double Gauss(double deviation) =>
        deviation * Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    /// <summary>Heavier tails than normal, same standard deviation: three degrees of freedom would have √3.</summary>
    internal double Heavy(double deviation)
    {
        double normal = Gauss(1), a = Gauss(1), b = Gauss(1), c = Gauss(1), d = Gauss(1), e = Gauss(1);
        return deviation * normal / Math.Sqrt(((a * a) + (b * b) + (c * c) + (d * d) + (e * e)) / 5) * Math.Sqrt(3.0 / 5.0);
    }

    internal static double Read(double value, double step) => step * Math.Floor((value / step) + 0.5);

    /// <summary>Width in millimetres of a bead of given section, found by halving: a strip between two half circles.</summary>
    internal static double BeadWidth(double section, double height)
    {
        double low = height, high = 100 * height;
        for (int i = 0; i < 80; i++)
        {
            double middle = (low + high) / 2, radius = height / 2;
            double trial = (Math.PI * radius * radius) + ((middle - (2 * radius)) * height);
            (low, high) = trial < section ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    /// <summary>The pieces fit when the flow at which this pair begins to bind lies above the flow it was printed at.</summary>
    internal bool Fits(double flow, double middle, double deviation) => middle + Gauss(deviation) > flow;
}
