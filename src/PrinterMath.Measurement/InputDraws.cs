namespace PrinterMath.Measurement;

/// <summary>Draws with mean zero and the standard deviation that the input's standard uncertainty stands for. JCGM 101:2008, 6.4 and annex C.</summary>
internal sealed class InputDraws(int seed)
{
    private readonly Random _random = new(seed);

    internal double Standard(InputShape shape, double degreesOfFreedom) => shape switch
    {
        InputShape.Rectangular => Math.Sqrt(3) * ((2 * _random.NextDouble()) - 1),
        InputShape.Triangular => Math.Sqrt(6) * (_random.NextDouble() + _random.NextDouble() - 1),
        InputShape.ArcSine => Math.Sqrt(2) * Math.Sin(2 * Math.PI * _random.NextDouble()),
        _ => double.IsPositiveInfinity(degreesOfFreedom) ? Normal() : Student(degreesOfFreedom),
    };

    /// <summary>Box and Muller's transform. JCGM 101:2008, C.4.</summary>
    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    /// <summary>
    /// t = N/√(χ²/ν), scaled by the standard uncertainty itself: JCGM 101:2008, 6.4.9.2, where the standard deviation of the draws is u·√(ν/(ν − 2)).
    /// </summary>
    private double Student(double degreesOfFreedom) => Normal() / Math.Sqrt(2 * Gamma(degreesOfFreedom / 2) / degreesOfFreedom);

    /// <summary>Gamma with shape a and scale 1. G. Marsaglia, W. W. Tsang 2000, A simple method for generating gamma variables, ACM TOMS 26.</summary>
    private double Gamma(double a)
    {
        if (a < 1)
        {
            return Gamma(a + 1) * Math.Pow(1 - _random.NextDouble(), 1 / a);
        }

        double d = a - (1.0 / 3);
        double c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            double x = Normal();
            double root = 1 + (c * x);
            double v = root * root * root;
            if (v > 0 && Math.Log(1 - _random.NextDouble()) < (0.5 * x * x) + d - (d * v) + (d * Math.Log(v)))
            {
                return d * v;
            }
        }
    }
}
