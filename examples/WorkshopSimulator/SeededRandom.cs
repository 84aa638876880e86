namespace WorkshopSimulator;

/// <summary>
/// Seeded random numbers that are the same on every platform and runtime: SplitMix64 (Steele, Lea, Flood 2014, from memory)
/// and normal deviates by the polar method.
/// </summary>
/// <param name="seed">Any number.</param>
public sealed class SeededRandom(ulong seed)
{
    private ulong _state = seed;
    private double? _spare;

    /// <summary>Uniform between two limits.</summary>
    public double Between(double low, double high) => low + ((high - low) * Unit());

    /// <summary>Log-uniform between two positive limits.</summary>
    public double LogBetween(double low, double high) => low * Math.Pow(high / low, Unit());

    /// <summary>A whole number from <paramref name="lowest"/> to <paramref name="highest"/>, both included.</summary>
    public int Whole(int lowest, int highest) => lowest + (int)(Unit() * (highest - lowest + 1));

    /// <summary>Normal deviate.</summary>
    public double Normal(double mean, double standardDeviation) => mean + (standardDeviation * Standard());

    /// <summary>A new stream, so that more draws in one part of the simulation leave the others as they were.</summary>
    public SeededRandom Branch() => new(Next());

    private double Standard()
    {
        if (_spare is { } kept)
        {
            _spare = null;
            return kept;
        }

        while (true)
        {
            double u = Between(-1, 1);
            double v = Between(-1, 1);
            double s = (u * u) + (v * v);
            if (s is > 0 and < 1)
            {
                double factor = Math.Sqrt(-2 * Math.Log(s) / s);
                _spare = v * factor;
                return u * factor;
            }
        }
    }

    private double Unit() => (Next() >> 11) * (1.0 / (1UL << 53));

    private ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15UL;
            ulong z = _state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
