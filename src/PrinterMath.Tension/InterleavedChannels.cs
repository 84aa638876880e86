using System.Buffers;

namespace PrinterMath.Tension;

/// <summary>Tells two channels read as one, sample after sample in turn, from one channel.</summary>
/// <remarks>
/// Equal channels come in equal pairs. Of two channels L and R that differ, x_n = (L + R)/2 + (−1)^n·(L − R)/2, so every partial at f has an image at half
/// the claimed rate less f that moves with it. The recording turned by (−1)^n brings the image to f, where both are followed in blocks. Without
/// an image the phase between the two is random: |Σ exp(iΔφ)|²/K of K blocks is exponentially distributed with mean 1, and its sum over P partials has the Erlang
/// distribution. A true partial that happens to lie at the place of the image is of higher number and dies faster. Source: Mardia and Jupp 2000, Directional Statistics, the Rayleigh test (from memory).
/// </remarks>
internal static class InterleavedChannels
{
    private const double FalseAlarm = 1e-7;
    private const double LeastGain = 1e-3;
    private const double MostFall = -1.4;
    private const double SureOdds = 4.6;
    private const double LeastPower = 1e-3;
    private const int MostPartials = 8;
    private const int Pairs = 4096;
    private const double Periods = 30;
    private const int LeastCount = 64;
    private const double UsualPitch = 100;

    /// <summary>Whether values come in equal pairs: of a run of the recording all even or all odd steps are zero and the others are not.</summary>
    internal static bool ComeInPairs(ReadOnlySpan<double> samples, int from)
    {
        int start = Math.Max(0, Math.Min(from, samples.Length - (2 * Pairs) - 1)) & ~1;
        int even = 0, odd = 0, end = Math.Min(samples.Length - 2, start + (2 * Pairs));
        for (int i = start; i < end && (even < 16 || odd < 16); i += 2)
        {
            even += samples[i] == samples[i + 1] ? 0 : 1;
            odd += samples[i + 1] == samples[i + 2] ? 0 : 1;
        }

        return Math.Min(even, odd) == 0 && Math.Max(even, odd) > 64;
    }

    /// <summary>Whether the partials of the strongest pluck, or the peaks of the loudest sound where none has a pitch, have images that move with them.</summary>
    internal static bool HaveImages(ReadOnlySpan<double> samples, double rate, double mean, List<PluckAnalysis> analyses)
    {
        PluckAnalysis? heard = analyses.Where(a => a.Fit is not null).MaxBy(a => a.Stretch.Energy);
        if (heard is not null)
        {
            double[] partials = [.. heard.Partials.OrderByDescending(p => p.Level.Decibels).Select(p => p.Frequency.Hertz)];
            return HaveImages(samples, rate, mean, heard.Stretch, partials, heard.FirstPartial);
        }

        PluckStretch loudest = analyses.MaxBy(a => a.Stretch.Energy)!.Stretch;
        int factor = PluckDecimator.FactorFor(rate), count = Math.Min(loudest.Count, (int)rate) / factor;
        if (count < LeastCount)
        {
            return false;
        }

        double[] taken = new double[count];
        PluckDecimator.Take(samples, loudest.Start, factor, mean, taken);
        using PluckSpectrum spectrum = PluckSpectrum.Of(taken, rate / factor, PluckAnalyzer.HighestPartial(rate));
        double[] peaks = [.. PeakFinder.Find(spectrum, PluckAnalyzer.LowestLine, 48).OrderByDescending(p => p.Power).Select(p => p.Frequency)];
        return HaveImages(samples, rate, mean, loudest, peaks, UsualPitch);
    }

    private static bool HaveImages(ReadOnlySpan<double> samples, double rate, double mean, PluckStretch stretch, ReadOnlySpan<double> frequencies, double f0)
    {
        int factor = PluckDecimator.FactorFor(rate);
        int count = Math.Min(stretch.Count, (int)(Math.Clamp(Periods / f0, 0.15, 1) * rate)) / factor;
        double[] lower = [.. Lower(frequencies, rate, rate / Math.Max(1, stretch.Count))];
        if (lower.Length < 2 || count < LeastCount)
        {
            return false;
        }

        double[] rented = ArrayPool<double>.Shared.Rent((2 * count) + (count * factor));
        Span<double> direct = rented.AsSpan(0, count), turned = rented.AsSpan(count, count), alternating = rented.AsSpan(2 * count, count * factor);
        PluckDecimator.Take(samples, stretch.Start, factor, mean, direct);
        double sign = 1;
        for (int i = 0; i < alternating.Length; i++, sign = -sign)
        {
            alternating[i] = sign * (samples[stretch.Start + i] - mean);
        }

        PluckDecimator.Take(alternating, 0, factor, 0, turned);
        PartialTracker sound = PartialTracker.Follow(direct, rate / factor, lower, f0), image = PartialTracker.Follow(turned, rate / factor, lower, f0);
        ArrayPool<double>.Shared.Return(rented);
        return MoveTogether(sound, image);
    }

    /// <summary>The strongest partials that lie below a quarter of the rate, so that they are not images themselves.</summary>
    private static List<double> Lower(ReadOnlySpan<double> frequencies, double rate, double resolution)
    {
        List<double> lower = [];
        foreach (double f in frequencies)
        {
            if (lower.Count < MostPartials && f < (0.25 * rate) - (4 * resolution))
            {
                lower.Add(f);
            }
        }

        return lower;
    }

    private static bool MoveTogether(PartialTracker sound, PartialTracker image)
    {
        int sure = 0, partials = 0;
        double odds = 0, gain = 0;
        for (int p = 0; p < sound.Partials; p++)
        {
            double largest = 0, c = 0, s = 0, cross = 0, crossTurned = 0, power = 0, sum = 0, first = 0, second = 0, along = 0;
            for (int b = 0; b < sound.Blocks; b++)
            {
                largest = Math.Max(largest, sound.PowerAt(b, p));
            }

            int blocks = 0;
            for (int b = 0; b < sound.Blocks; b++)
            {
                double own = sound.PowerAt(b, p), other = image.PowerAt(b, p);
                if (own <= LeastPower * largest || other <= 0)
                {
                    continue;
                }

                int i = (b * sound.Partials) + p;
                double dot = (sound.Re[i] * image.Re[i]) + (sound.Im[i] * image.Im[i]), turn = (sound.Re[i] * image.Im[i]) - (sound.Im[i] * image.Re[i]);
                double size = Math.Sqrt(own * other);
                blocks++;
                c += dot / size;
                s += turn / size;
                cross += dot;
                crossTurned += turn;
                power += own;
                double log = Math.Log(other / own);
                sum += log;
                first += b;
                second += (double)b * b;
                along += b * log;
            }

            double change = blocks < 2 ? 0 : (along - (first * sum / blocks)) / (second - (first * first / blocks)) * (blocks - 1);
            if (blocks >= 5)
            {
                double z = change < MostFall ? 0 : ((c * c) + (s * s)) / blocks;
                partials++;
                odds += z;
                sure += z > SureOdds ? 1 : 0;
                gain = Math.Max(gain, Math.Sqrt((cross * cross) + (crossTurned * crossTurned)) / power);
            }
        }

        return sure >= Math.Max(2, (partials + 1) / 2) && gain > LeastGain && ErlangTail(odds, partials) < FalseAlarm;
    }

    /// <summary>P(sum of k unit exponentials exceeds z) = e^(−z)·Σ z^j/j!, j below k.</summary>
    private static double ErlangTail(double z, int k)
    {
        double term = 1, sum = 1;
        for (int j = 1; j < k; j++)
        {
            term *= z / j;
            sum += term;
        }

        return Math.Exp(-z) * sum;
    }
}
