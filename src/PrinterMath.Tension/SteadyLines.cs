using System.Buffers;

namespace PrinterMath.Tension;

/// <summary>Lines that were there without the pluck, or that do not decay with it: mains hum, fans.</summary>
internal static class SteadyLines
{
    private const double LeastQuiet = 0.25;
    private const double LongestQuiet = 1.5;
    private const double MainsTolerance = 0.004;
    private const double Margin = 4;

    /// <summary>Peaks of the longest stretch outside the plucks, with power per squared sample count; empty when there is no such stretch.</summary>
    internal static QuietLines Outside(ReadOnlySpan<double> samples, double rate, PluckEnvelope envelope, IReadOnlyList<PluckStretch> plucks)
    {
        (int start, int count) = LongestGap(samples.Length, rate, plucks);
        if (count < LeastQuiet * rate)
        {
            return QuietLines.None;
        }

        count = Math.Min(count, (int)(LongestQuiet * rate));
        int factor = PluckDecimator.FactorFor(rate);
        count /= factor;
        double[] rented = ArrayPool<double>.Shared.Rent(count);
        Span<double> quiet = rented.AsSpan(0, count);
        PluckDecimator.Take(samples, start, factor, envelope.Mean, quiet);
        using PluckSpectrum spectrum = PluckSpectrum.Of(quiet, rate / factor, PluckAnalyzer.HighestPartial(rate));
        ArrayPool<double>.Shared.Return(rented);
        return new QuietLines(PeakFinder.Find(spectrum, PluckAnalyzer.LowestLine, 48), spectrum.Resolution, (double)count * count);
    }

    /// <summary>Whether a peak is a line of the quiet stretch at much the same strength.</summary>
    internal static bool IsBackground(SpectralPeak peak, double resolution, double countSquared, QuietLines quiet)
    {
        foreach (SpectralPeak line in quiet.Peaks)
        {
            if (Math.Abs(line.Frequency - peak.Frequency) < 0.75 * Math.Max(resolution, quiet.Resolution)
                && peak.Power / countSquared < Margin * line.Power / quiet.CountSquared)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a frequency is a whole multiple of a mains frequency.</summary>
    internal static bool IsMains(double frequency, double resolution)
    {
        return Near(50) || Near(60);

        bool Near(double mains)
        {
            double multiple = Math.Round(frequency / mains);
            return multiple is >= 1 and <= 6
                && Math.Abs(frequency - (multiple * mains)) < (MainsTolerance * frequency) + (0.1 * resolution);
        }
    }

    /// <summary>Power at a frequency in the last half of the window over that in the first, each under a Hann taper; 1 for a line that does not decay.</summary>
    internal static double Persistence(ReadOnlySpan<double> samples, double rate, double frequency)
    {
        int half = samples.Length / 2;
        double early = Power(samples[..half], rate, frequency), late = Power(samples[half..], rate, frequency);
        return early > 0 ? late / early : 1;
    }

    private static double Power(ReadOnlySpan<double> x, double rate, double frequency)
    {
        (double s, double c) = Math.SinCos(2 * Math.PI * frequency / rate);
        (double ws, double wc) = Math.SinCos(2 * Math.PI / x.Length);
        double pr = 1, pi = 0, tr = 1, ti = 0, re = 0, im = 0;
        for (int i = 0; i < x.Length; i++)
        {
            double w = x[i] * (1 - tr);
            re += w * pr;
            im += w * pi;
            (pr, pi) = ((pr * c) - (pi * s), (pr * s) + (pi * c));
            (tr, ti) = ((tr * wc) - (ti * ws), (tr * ws) + (ti * wc));
        }

        return ((re * re) + (im * im)) / ((double)x.Length * x.Length);
    }

    private static (int Start, int Count) LongestGap(int length, double rate, IReadOnlyList<PluckStretch> plucks)
    {
        int from = 0, start = 0, count = 0;
        int margin = (int)(0.02 * rate);
        foreach (PluckStretch pluck in plucks)
        {
            Consider(pluck.Start - margin);
            from = pluck.Start + pluck.Count + margin;
        }

        Consider(length);
        return (start, count);

        void Consider(int until)
        {
            if (until - from > count)
            {
                (start, count) = (from, until - from);
            }
        }
    }
}
