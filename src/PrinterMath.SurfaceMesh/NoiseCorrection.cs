using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Limits of the peak-to-valley that the surface itself has, from what noise does to it in simulated probings; no shape is assumed.</summary>
internal sealed class NoiseCorrection
{
    private NoiseCorrection(double lower, double upper, Measured<Length> peakToValley, Measured<Length> rootMeanSquare, double chanceIfFlat)
    {
        Lower = lower;
        Upper = upper;
        PeakToValley = peakToValley;
        RootMeanSquare = rootMeanSquare;
        ChanceIfFlat = chanceIfFlat;
    }

    internal double Lower { get; }

    internal double Upper { get; }

    internal Measured<Length> PeakToValley { get; }

    internal Measured<Length> RootMeanSquare { get; }

    /// <summary>Probability that a plane with this noise scatters at least as much.</summary>
    internal double ChanceIfFlat { get; }

    internal static NoiseCorrection Of(ProbePoint[] points, double[] residuals, PlaneDeviations raw, PlaneBasis basis, PointNoise noise, FlatnessOptions options)
    {
        LocalMeans[] scales = LocalMeans.Of(points);
        double[][] ranges = [.. scales.Select(_ => new double[options.Trials])];
        double[] hidden = new double[options.Trials];
        double[] errors = new double[points.Length];
        var draws = new ProbingDraws(options.Seed, noise);
        for (int trial = 0; trial < options.Trials; trial++)
        {
            draws.Fill(errors);
            basis.Remove(errors);
            hidden[trial] = LargestHidden(errors, trial % points.Length, raw.PeakToValley);
            for (int s = 0; s < scales.Length; s++)
            {
                ranges[s][trial] = scales[s].PeakToValley(errors);
            }
        }

        double tail = (1 - options.Coverage) / 2;
        double variance = noise.StandardUncertainties.Average(u => u * u);
        double factor = MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, 1 - tail);
        double lower = Math.Max(0, LowerLimit(scales, residuals, ranges, tail));
        double upper = Math.Max(Math.Max(lower, Quantile(hidden, 1 - tail)), factor * Math.Sqrt(variance));
        double squares = residuals.Sum(r => r * r);
        return new NoiseCorrection(
            lower,
            upper,
            Measured<Length>.FromSi((lower + upper) / 2, (upper - lower) / (2 * factor)),
            MeanSquareRoot(squares, residuals.Length, basis.Terms, variance, noise.DegreesOfFreedom),
            PointNoise.ChanceOfMore(squares / variance, residuals.Length - basis.Terms, noise.DegreesOfFreedom));
    }

    /// <summary>
    /// Means over circles never have a wider range than the surface; noise widens that range by at most its own. The limits of the noise at all scales
    /// hold together: mean + κ·standard deviation of its range, with the κ that the largest of the scales exceeds in one tail of the trials.
    /// </summary>
    private static double LowerLimit(LocalMeans[] scales, double[] residuals, double[][] ranges, double tail)
    {
        SampleSummary[] spreads = [.. ranges.Select(range => SampleSummary.Of(range))];
        double[] worst = new double[ranges[0].Length];
        for (int trial = 0; trial < worst.Length; trial++)
        {
            worst[trial] = Enumerable.Range(0, scales.Length)
                .Max(s => spreads[s].StandardDeviation > 0 ? (ranges[s][trial] - spreads[s].Mean) / spreads[s].StandardDeviation : 0);
        }

        double factor = Quantile(worst, 1 - tail);
        return Enumerable.Range(0, scales.Length)
            .Max(s => scales[s].PeakToValley(residuals) - spreads[s].Mean - (factor * spreads[s].StandardDeviation));
    }

    /// <summary>
    /// The largest peak-to-valley that these errors let pass as the raw one or less, when it stands in two points alone, +P/2 and −P/2, and all others lie between: the
    /// shape that noise hides best.
    /// </summary>
    private static double LargestHidden(ReadOnlySpan<double> errors, int peak, double raw)
    {
        int valley = (peak + (errors.Length / 2)) % errors.Length;
        double high = double.NegativeInfinity, low = double.PositiveInfinity;
        for (int k = 0; k < errors.Length; k++)
        {
            if (k != peak && k != valley)
            {
                high = Math.Max(high, errors[k]);
                low = Math.Min(low, errors[k]);
            }
        }

        return high - low > raw
            ? 0
            : Math.Min(raw - errors[peak] + errors[valley], 2 * Math.Min(raw + low - errors[peak], raw - high + errors[valley]));
    }

    /// <summary>m = (Σr² − (n − 3)σ²)/n, s(m)² = (2(n − 3)σ⁴ + 4σ²·nm)/n² + 2((n − 3)σ²/n)²/ν, u = √(m + s) − √m.</summary>
    private static Measured<Length> MeanSquareRoot(double squares, int count, int terms, double variance, double noiseFreedom)
    {
        double noise = (count - terms) * variance / count;
        double mean = Math.Max(0, (squares / count) - noise);
        double spread = Math.Sqrt((2 * noise * variance / count) + (4 * variance * mean / count) + (2 * noise * noise / noiseFreedom));
        return Measured<Length>.FromSi(Math.Sqrt(mean), Math.Sqrt(mean + spread) - Math.Sqrt(mean));
    }

    private static double Quantile(double[] values, double probability)
    {
        double[] sorted = [.. values.Order()];
        double place = probability * (sorted.Length - 1);
        int below = Math.Min((int)place, sorted.Length - 2);
        return sorted[below] + ((place - below) * (sorted[below + 1] - sorted[below]));
    }
}
