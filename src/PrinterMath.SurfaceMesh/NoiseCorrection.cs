using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Takes the probe's noise out of a peak-to-valley by simulated probings of a smoothed shape.</summary>
internal sealed class NoiseCorrection
{
    /// <summary>Scatter beyond the noise is believed when chance gives it less often than this.</summary>
    private const double RoughChance = 0.01;

    private NoiseCorrection(Measured<Length> peakToValley, Measured<Length> rootMeanSquare, double lower, double upper, double chanceIfFlat)
    {
        PeakToValley = peakToValley;
        RootMeanSquare = rootMeanSquare;
        Lower = lower;
        Upper = upper;
        ChanceIfFlat = chanceIfFlat;
    }

    internal Measured<Length> PeakToValley { get; }

    internal Measured<Length> RootMeanSquare { get; }

    internal double Lower { get; }

    internal double Upper { get; }

    /// <summary>Probability that a plane with this noise scatters at least as much.</summary>
    internal double ChanceIfFlat { get; }

    internal static NoiseCorrection Of(double[] residuals, PlaneDeviations raw, ShapeBasis basis, PointNoise noise, FlatnessOptions options)
    {
        double variance = noise.StandardUncertainties.Average(u => u * u);
        int freedom = residuals.Length - basis.Terms(1);
        double squares = raw.RootMeanSquare * raw.RootMeanSquare * residuals.Length;
        double[] shape = Smooth(residuals, basis, variance, noise.DegreesOfFreedom);
        PlaneDeviations own = PlaneDeviations.Of(shape);
        double[] excess = new double[options.Trials];
        double[] meanSquares = new double[options.Trials];
        var draws = new ProbingDraws(options.Seed, noise);
        double[] probed = new double[residuals.Length];
        double share = freedom / (double)residuals.Length;
        for (int trial = 0; trial < options.Trials; trial++)
        {
            draws.Fill(probed);
            basis.Remove(probed, 1);
            for (int k = 0; k < probed.Length; k++)
            {
                probed[k] += shape[k];
            }

            PlaneDeviations simulated = PlaneDeviations.Of(probed);
            excess[trial] = simulated.PeakToValley - own.PeakToValley;
            meanSquares[trial] = Math.Sqrt(Math.Max(0, Math.Pow(simulated.RootMeanSquare, 2) - (share * variance)));
        }

        SampleSummary spread = SampleSummary.Of(excess);
        Array.Sort(excess);
        double tail = (1 - options.Coverage) / 2;
        return new NoiseCorrection(
            Measured<Length>.FromSi(Math.Max(0, raw.PeakToValley - spread.Mean), spread.StandardDeviation),
            Measured<Length>.FromSi(Math.Sqrt(Math.Max(0, (squares / residuals.Length) - (share * variance))), SampleSummary.Of(meanSquares).StandardDeviation),
            Math.Max(0, raw.PeakToValley - Quantile(excess, 1 - tail)),
            Math.Max(0, raw.PeakToValley - Quantile(excess, tail)),
            PointNoise.ChanceOfMore(squares / variance, freedom, noise.DegreesOfFreedom));
    }

    private static double[] Smooth(double[] residuals, ShapeBasis basis, double variance, double noiseFreedom)
    {
        double[] rest = [.. residuals];
        double[] best = rest;
        double least = double.PositiveInfinity, leftOver = 0;
        int freedom = 0;
        for (int degree = 1; degree <= ShapeBasis.HighestDegree && basis.Terms(degree) < residuals.Length; degree++)
        {
            basis.RemoveBetween(rest, degree - 1, degree);
            double chiSquare = rest.Sum(r => r * r) / variance;
            double criterion = chiSquare + (2 * basis.Terms(degree));
            if (criterion < least)
            {
                (least, leftOver, freedom, best) = (criterion, chiSquare, residuals.Length - basis.Terms(degree), [.. rest]);
            }
        }

        bool rough = freedom > 0 && PointNoise.ChanceOfMore(leftOver, freedom, noiseFreedom) < RoughChance;
        double kept = rough ? Math.Sqrt(1 - (freedom / leftOver)) : 0;
        return [.. residuals.Select((r, k) => r - ((1 - kept) * best[k]))];
    }

    private static double Quantile(double[] sorted, double probability)
    {
        double place = probability * (sorted.Length - 1);
        int below = Math.Min((int)place, sorted.Length - 2);
        return sorted[below] + ((place - below) * (sorted[below + 1] - sorted[below]));
    }
}
