using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Noise of residuals near a frequency: variance that white noise of the same density would have.</summary>
internal sealed class NoiseFloor
{
    private const int FewestBins = 16;
    private readonly double[] _powers;
    private readonly int _count;

    private NoiseFloor(double[] powers, int count)
    {
        _powers = powers;
        _count = count;
    }

    internal static NoiseFloor Of(ReadOnlySpan<double> residuals)
    {
        int n = residuals.Length;
        var transform = new RealFourierTransform(n);
        double[] re = new double[transform.Bins], im = new double[transform.Bins];
        transform.Forward(residuals, re, im);
        double[] powers = new double[re.Length];
        for (int k = 0; k < powers.Length; k++)
        {
            powers[k] = ((re[k] * re[k]) + (im[k] * im[k])) / n;
        }

        return new NoiseFloor(powers, n);
    }

    /// <summary>Bins from a third below to a third above the frequency, at least 16 either way, without zero and half the rate.</summary>
    internal (int First, int Last) Band(double angle)
    {
        int centre = (int)Math.Round(angle * _count / (2 * Math.PI));
        int half = Math.Max(FewestBins, centre / 3);
        return (Math.Max(1, centre - half), Math.Min(((_count - 1) / 2) - 1, centre + half));
    }

    /// <summary>Mean power of the band, and the number of bins behind it, after what the fitted terms in it took away: four numbers, two bins each.</summary>
    internal (double Variance, double Bins) Mean(double angle, IEnumerable<double> fittedAngles)
    {
        (int first, int last) = Band(angle);
        double sum = 0;
        for (int k = first; k <= last; k++)
        {
            sum += _powers[k];
        }

        double unit = 2 * Math.PI / _count;
        int fitted = fittedAngles.Count(a => a >= (first - 1) * unit && a <= (last + 1) * unit);
        double bins = Math.Max(1, last - first + 1 - (2 * fitted));
        return (sum / bins, bins);
    }

    /// <summary>Median power of the band over ln 2, the ratio of median to mean of exponential variates; blind to a few strong lines.</summary>
    internal (double Variance, int Bins) Median(double angle)
    {
        (int first, int last) = Band(angle);
        double[] band = _powers[first..(last + 1)];
        return (SampleClock.Median(band) / Math.Log(2), band.Length);
    }
}
