using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>What happens between the plucks of one recording.</summary>
public enum Between
{
    /// <summary>Taps on the telephone, 0.3 to 1 of the loudness of a pluck.</summary>
    Taps,

    /// <summary>Taps 8 to 30 times as loud as a pluck.</summary>
    LoudTaps,

    /// <summary>The finger returns before the span is silent, stops it within some milliseconds and plucks again.</summary>
    Overlap,

    /// <summary>One pluck, and the recording ends 10 to 20 periods and 0.1 s after it.</summary>
    Cut,

    /// <summary>Plucks 0.3 s apart.</summary>
    Close,
}

/// <summary>Several plucks of one belt with what happens between them.</summary>
public sealed record SeveralPlucks(SampledSignal Signal, double FirstPartial, int Plucks)
{
    private static readonly double[] Rates = [8_000, 16_000, 22_050, 44_100, 48_000];

    public static SeveralPlucks Make(Between between, int seed)
    {
        Random random = SeededRandom.For(seed, (int)between);
        double rate = Rates[random.Next(Rates.Length)], f = 60 * Math.Pow(5, random.NextDouble()), quality = 25 * Math.Pow(4, random.NextDouble());
        Belt belt = new(f, quality, Math.Pow(10, -5 + (2 * random.NextDouble())), 0.12 + (0.3 * random.NextDouble()));
        int plucks = between == Between.Cut ? 1 : 4;
        double apart = between == Between.Close ? 0.3 : between == Between.Overlap ? 0.15 + (quality / (Math.PI * f)) : 0.9, first = 0.3;
        double tail = between == Between.Cut ? Math.Max(0.1, (10 + (10 * random.NextDouble())) / f) : 0.8;
        double[] x = new double[(int)((first + ((plucks - 1) * apart) + tail) * rate)];
        for (int p = 0; p < plucks; p++)
        {
            double start = first + (p * apart) + (0.02 * random.NextDouble());
            if (between == Between.Overlap && p > 0)
            {
                Stop(x, rate, start, 0.003 + (0.005 * random.NextDouble()));
            }

            SpoiltRecording.Strike(x, rate, start, belt with { Place = belt.Place * (0.95 + (0.1 * random.NextDouble())) }, 0.7 + (0.3 * random.NextDouble()), random);
        }

        double largest = x.Max(Math.Abs);
        for (int t = 0; t < 4 && between is Between.Taps or Between.LoudTaps; t++)
        {
            double loudness = between == Between.Taps ? 0.3 + (0.7 * random.NextDouble()) : 8 * Math.Pow(4, random.NextDouble());
            Tap(x, rate, first + 0.45 + (t * apart * (t == 3 ? -0.1 : 1)), loudness * largest, random);
        }

        double[] noise = SpoiltRecording.Noise(x.Length, rate, random.Next(3), random);
        double scale = largest * Math.Pow(10, -(35 + (15 * random.NextDouble())) / 20);
        for (int i = 0; i < x.Length; i++)
        {
            x[i] += scale * noise[i];
        }

        return new SeveralPlucks(SampledSignal.FromSamples(x, Frequency.FromHertz(rate)), f, plucks);
    }

    /// <summary>A thud of 60 to 150 Hz that dies within a period or two, and a rattle of noise.</summary>
    private static void Tap(double[] x, double rate, double start, double loudness, Random random)
    {
        double thud = 60 + (90 * random.NextDouble()), seconds = 0.008 + (0.015 * random.NextDouble()), rattle = 0.2 + (0.8 * random.NextDouble());
        int from = (int)(start * rate);
        for (int i = from; i < Math.Min(x.Length, from + (int)(12 * seconds * rate)); i++)
        {
            double t = (i - from) / rate;
            x[i] += loudness * Math.Pow(2, -t / seconds) * (Math.Sin(2 * Math.PI * thud * t) + (rattle * SpoiltRecording.Normal(random) * Math.Pow(2, -t / seconds)));
        }
    }

    private static void Stop(double[] x, double rate, double at, double seconds)
    {
        for (int i = (int)((at - (4 * seconds)) * rate); i < x.Length; i++)
        {
            x[i] *= Math.Pow(2, -(i / rate - at + (4 * seconds)) / seconds);
        }
    }
}
