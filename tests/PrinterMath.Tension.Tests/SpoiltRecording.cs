using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>What is wrong with a simulated recording.</summary>
public enum Spoilt
{
    Not,
    Neighbour,
    Gate,
    LevelControl,
    TwoChannels,
}

/// <summary>A belt plucked near a telephone, and what spoilt the recording.</summary>
/// <remarks>
/// Each partial is a damped oscillator run by its two-term recursion, struck by a short pulse, so that no exponential or sine of the package is shared. Belts: 40 to 350 Hz, Q 20 to
/// 100 for the first partial, falling as 1/√n in time. Noise: white, or a sum of held random values whose density falls with frequency, or bursts of differing loudness.
/// </remarks>
public sealed record SpoiltRecording(double[] Samples, double Rate, double FirstPartial, double Ring, double Beat)
{
    private static readonly double[] Rates = [8_000, 16_000, 22_050, 44_100, 48_000, 96_000];

    /// <summary>Largest relative difference of pitch that is called nearly equal.</summary>
    public const double NearestPitch = 0.04;

    public SampledSignal Signal => SampledSignal.FromSamples(Samples, Frequency.FromHertz(Rate));

    /// <param name="spoilt">What is wrong.</param>
    /// <param name="seed">Seed of everything that is drawn.</param>
    /// <param name="turns">For a neighbour: beats of the first partial within the time in which it falls by 30 dB, drawn from 1 to 2 times this.</param>
    /// <param name="lowestNoise">Largest sample over RMS noise, lowest value in dB; the highest is 15 dB above.</param>
    /// <param name="rate">Sample rate in Hz; 0 draws one.</param>
    public static SpoiltRecording Make(Spoilt spoilt, int seed, double turns = 3, double lowestNoise = 35, double rate = 0)
    {
        Random random = SeededRandom.For(seed, (int)spoilt);
        double drawn = Rates[random.Next(Rates.Length)];
        rate = rate > 0 ? rate : drawn;
        double f = 40 * Math.Pow(350.0 / 40, random.NextDouble()), quality = 20 * Math.Pow(5, random.NextDouble());
        double ring = quality / (Math.PI * f) * 1.5 * Math.Log(10), start = 0.4 + (0.1 * random.NextDouble());
        double seconds = start + Math.Max(0.5, 1.6 * ring) + 0.3;
        double[] x = new double[(int)(seconds * rate)];
        double stiffness = Math.Pow(10, -5 + (2 * random.NextDouble())), place = 0.1 + (0.38 * random.NextDouble());
        Belt belt = new(f, quality, stiffness, place);
        Strike(x, rate, start, belt, 1, random);
        double beat = 0;
        if (spoilt == Spoilt.Neighbour)
        {
            beat = turns * (1 + random.NextDouble()) / ring;
            double loudness = 0.18 * Math.Pow(3.5, random.NextDouble());
            Strike(x, rate, start, belt with { First = f + (random.Next(2) == 0 ? beat : -beat), Quality = quality * (0.8 + (0.4 * random.NextDouble())) }, loudness, random);
        }

        double largest = x.Max(Math.Abs), decibels = lowestNoise + (15 * random.NextDouble());
        int kind = random.Next(3);
        double[] noise = Noise(x.Length, rate, kind, random), clean = (double[])x.Clone();
        double scale = largest * Math.Pow(10, -decibels / 20);
        for (int i = 0; i < x.Length; i++)
        {
            x[i] += scale * noise[i];
        }

        if (spoilt == Spoilt.Gate)
        {
            Telephone.Gate(x, rate, random);
        }
        else if (spoilt == Spoilt.LevelControl)
        {
            Telephone.Level(x, rate, random);
        }
        else if (spoilt == Spoilt.TwoChannels)
        {
            x = Interleave(x, clean, scale, Noise(x.Length, rate, kind, random), random);
        }

        return new SpoiltRecording(x, rate, f, ring, beat);
    }

    /// <summary>A second microphone: 0.5 to 0.85 of the level or as much more, up to 6 samples later, with noise of its own for the most part.</summary>
    private static double[] Interleave(double[] left, double[] clean, double scale, double[] noise, Random random)
    {
        double gain = 0.5 + (0.35 * random.NextDouble());
        gain = random.Next(2) == 0 ? gain : 1 / gain;
        int lag = random.Next(7);
        double[] both = new double[2 * left.Length];
        for (int i = 0; i < left.Length; i++)
        {
            both[2 * i] = left[i];
            both[(2 * i) + 1] = (gain * clean[Math.Max(0, i - lag)]) + (scale * noise[i]);
        }

        return both;
    }

    internal static void Strike(double[] x, double rate, double start, Belt belt, double loudness, Random random)
    {
        int from = (int)(start * rate);
        for (int n = 1; n <= 40; n++)
        {
            double natural = belt.First * n * Math.Sqrt((1 + (belt.Stiffness * n * n)) / (1 + belt.Stiffness));
            if (natural > 0.42 * rate)
            {
                break;
            }

            double damping = Math.PI * belt.First / belt.Quality * Math.Sqrt(n), radius = Math.Exp(-damping / rate);
            double a = 2 * radius * Math.Cos(2 * Math.PI * natural / rate), b = -radius * radius;
            double strength = loudness * Math.Sin(Math.PI * n * belt.Place) / n * Math.Exp(0.3 * Normal(random)) * Math.Sin(2 * Math.PI * natural / rate);
            double one = 0, two = 0, kick = 2 * random.NextDouble() - 1;
            for (int i = from; i < x.Length; i++)
            {
                double force = i == from ? strength : i == from + 1 ? kick * strength : 0;
                double next = (a * one) + (b * two) + force;
                (two, one) = (one, next);
                x[i] += next;
                if (i > from + 8 && Math.Abs(one) + Math.Abs(two) < 1e-9)
                {
                    break;
                }
            }
        }
    }

    internal static double[] Noise(int count, double rate, int kind, Random random)
    {
        double[] x = new double[count];
        double[] held = new double[12];
        double loud = 1;
        int burst = (int)(0.15 * rate);
        for (int i = 0; i < count; i++)
        {
            if (kind == 1)
            {
                for (int k = 0; k < held.Length; k++)
                {
                    held[k] = i % (1 << k) == 0 ? Normal(random) : held[k];
                    x[i] += held[k] / Math.Sqrt(held.Length);
                }
            }
            else
            {
                loud = kind == 2 && i % burst == 0 ? 0.8 + (0.45 * random.NextDouble()) : loud;
                x[i] = loud * Normal(random);
            }
        }

        return x;
    }

    internal static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}

/// <summary>First partial in Hz, its Q, stiffness share and place of the pluck along the span.</summary>
internal sealed record Belt(double First, double Quality, double Stiffness, double Place);

/// <summary>Gate and automatic level of a telephone.</summary>
internal static class Telephone
{
    /// <summary>Shuts within 5 to 20 ms when the peak of the last 30 ms falls 14 to 24 dB below the loudest, to a floor of nothing or 25 to 40 dB less.</summary>
    internal static void Gate(double[] x, double rate, Random random)
    {
        double[] peaks = Held(x, (int)(0.03 * rate));
        double threshold = peaks.Max() * Math.Pow(10, -(14 + (10 * random.NextDouble())) / 20);
        double shut = random.Next(2) == 0 ? 0 : Math.Pow(10, -(25 + (15 * random.NextDouble())) / 20);
        double step = (1 - shut) / ((0.005 + (0.015 * random.NextDouble())) * rate), open = shut;
        for (int i = 0; i < x.Length; i++)
        {
            open = peaks[i] > threshold ? 1 : Math.Max(shut, open - step);
            x[i] *= open;
        }
    }

    /// <summary>Gain falls at once and recovers at 20 to 80 dB/s toward the level asked for, by 20 dB at most.</summary>
    internal static void Level(double[] x, double rate, Random random)
    {
        double[] peaks = Held(x, (int)(0.03 * rate));
        double loudest = peaks.Max(), recovery = Math.Pow(10, (20 + (60 * random.NextDouble())) / 20 / rate), gain = 10;
        for (int i = 0; i < x.Length; i++)
        {
            gain = Math.Min(gain * recovery, Math.Min(10, loudest / Math.Max(peaks[i], 1e-12)));
            x[i] *= gain;
        }
    }

    /// <summary>Largest magnitude within the last samples.</summary>
    private static double[] Held(double[] x, int span)
    {
        double[] held = new double[x.Length];
        LinkedList<int> queue = new();
        for (int i = 0; i < x.Length; i++)
        {
            while (queue.Last is { } last && Math.Abs(x[last.Value]) <= Math.Abs(x[i]))
            {
                queue.RemoveLast();
            }

            queue.AddLast(i);
            if (queue.First!.Value <= i - span)
            {
                queue.RemoveFirst();
            }

            held[i] = Math.Abs(x[queue.First!.Value]);
        }

        return held;
    }
}
