using System.Numerics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>What makes a simulated recording hard.</summary>
public enum Hardship
{
    White,
    PinkNoise,
    MicrophoneRollOff,
    HumBesideAPartial,
    EvenPartialsDominate,
    LongString,
    NeighbourRings,
    LevelControl,
    Gate,
    Glide,
}

/// <summary>A belt or a string plucked in a noisy room, and the truth behind the recording.</summary>
/// <remarks>
/// Fundamentals 30 to 400 Hz log-uniform; rates 8 to 96 kHz; belts of Q 20 to 100, strings of Q 200 to 1000; signal-to-noise 10 to 40 dB over 20 to 2000 Hz in
/// the first half second. Drawn again until two partials, one of them odd, have an energy of at least 20 dB over half the noise density.
/// </remarks>
public sealed record SimulatedSpan(SampledSignal Signal, double FirstPartial, double Glide)
{
    private static readonly double[] Rates = [8_000, 11_025, 16_000, 22_050, 32_000, 44_100, 48_000, 96_000];

    public static SimulatedSpan Make(Hardship hardship, int seed)
    {
        Random random = new((1000 * seed) + (int)hardship);
        while (true)
        {
            SimulatedSpan? span = Draw(hardship, random);
            if (span is not null)
            {
                return span;
            }
        }
    }

    private static SimulatedSpan? Draw(Hardship hardship, Random random)
    {
        double rate = Rates[random.Next(Rates.Length)], start = 0.3 + (0.1 * random.NextDouble());
        double f = 30 * Math.Pow(400.0 / 30, random.NextDouble());
        double quality = hardship == Hardship.LongString ? 200 * Math.Pow(5, random.NextDouble()) : 20 * Math.Pow(5, random.NextDouble());
        double hum = 0, mains = random.Next(2) == 0 ? 50 : 60;
        if (hardship == Hardship.HumBesideAPartial)
        {
            int partial = random.Next(1, 5);
            f = ((mains * Math.Max(1, Math.Round(f * partial / mains))) + ((4 * random.NextDouble()) - 2)) / partial;
            hum = 0.03 * Math.Pow(5, random.NextDouble());
        }

        double glide = hardship == Hardship.Glide ? 0.002 * Math.Pow(10, random.NextDouble()) : 0;
        double stiffness = Math.Pow(10, -5 + (2 * random.NextDouble())), place = 0.1 + (0.4 * random.NextDouble());
        List<Voice> voices = [];
        for (int n = 1; n <= 30; n++)
        {
            double natural = f * n * Math.Sqrt((1 + (stiffness * n * n)) / (1 + stiffness));
            if (natural > 0.4 * rate)
            {
                break;
            }

            double amplitude = Math.Abs(Math.Sin(Math.PI * n * place)) / n * Math.Exp(0.3 * Gauss(random));
            amplitude *= hardship == Hardship.EvenPartialsDominate && n % 2 == 1 ? 0.15 : 1;
            amplitude *= hardship == Hardship.MicrophoneRollOff ? 1 / (1 + Math.Pow(150 / natural, 2)) : 1;
            voices.Add(new Voice(n, natural, amplitude, quality / (Math.PI * natural) * Math.Sqrt(n)));
        }

        bool pink = hardship == Hardship.PinkNoise || random.Next(2) == 0;
        double decibels = 10 + (30 * random.NextDouble()), heard = voices.Sum(v => v.MeanPower(0.5));
        double scale = heard / RoomNoise.Power(pink, rate) * Math.Pow(10, -decibels / 10);
        int[] above = [.. voices.Where(v => v.Energy / (RoomNoise.Density(pink, v.Frequency, rate) * scale / 2) > 100).Select(v => v.Number)];
        if (hardship != Hardship.White && (f < 30 || f > 400) || above.Length < 2 || above.All(n => n % 2 == 0))
        {
            return null;
        }

        double seconds = start + Math.Max(hardship == Hardship.LongString ? 1.5 : 0.7, 25 / f);
        double[] x = new double[(int)(seconds * rate)];
        Ring(x, rate, start, voices, 1, 1, glide, quality / (Math.PI * f), random);
        if (hardship == Hardship.NeighbourRings)
        {
            double apart = (random.Next(2) == 0 ? 1 : -1) * 0.004 * Math.Pow(10, random.NextDouble());
            Ring(x, rate, start, voices, 1 + apart, 0.15 + (0.35 * random.NextDouble()), 0, 1, random);
        }

        double largest = x.Max(Math.Abs);
        double[] noise = RoomNoise.Make(pink, x.Length, rate, random);
        for (int i = 0; i < x.Length; i++)
        {
            double turn = 2 * Math.PI * mains * i / rate;
            x[i] += (Math.Sqrt(scale) * noise[i]) + (hum * largest * (Math.Sin(turn) + (0.5 * Math.Sin((2 * turn) + 1)) + (0.3 * Math.Sin((3 * turn) + 2))));
        }

        if (hardship is Hardship.LevelControl or Hardship.Gate)
        {
            Recorder.Process(x, rate, hardship == Hardship.Gate);
        }

        return new SimulatedSpan(SampledSignal.FromSamples(x, Frequency.FromHertz(rate)), f, glide);
    }

    private static void Ring(double[] x, double rate, double start, List<Voice> voices, double pitch, double loudness, double glide, double glideDecay, Random random)
    {
        int from = (int)Math.Ceiling(start * rate);
        foreach (Voice v in voices)
        {
            double phase = 2 * Math.PI * random.NextDouble();
            for (int i = from; i < x.Length; i++)
            {
                double t = (i / rate) - start;
                double level = Math.Exp(-t / v.Decay);
                if (level < 1e-5)
                {
                    break;
                }

                x[i] += loudness * v.Amplitude * level * Math.Min(1, t / 0.002) * Math.Sin(phase);
                phase += 2 * Math.PI * pitch * v.Frequency * (1 + (glide * Math.Exp(-2 * t / glideDecay))) / rate;
            }
        }
    }

    internal static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private readonly record struct Voice(int Number, double Frequency, double Amplitude, double Decay)
    {
        public double Energy => Amplitude * Amplitude * Decay / 4;

        public double MeanPower(double seconds) => Frequency > 2000 ? 0 : Energy * (1 - Math.Exp(-2 * seconds / Decay)) / seconds;
    }
}

/// <summary>White noise, or a sum of three low-passed noises whose density falls by about 10 dB per decade.</summary>
internal static class RoomNoise
{
    private static readonly double[] Corners = [20, 200, 2000];
    private static readonly double[] Weights = [1, 0.33, 0.11];

    internal static double[] Make(bool pink, int count, double rate, Random random)
    {
        double[] x = new double[count], states = new double[Corners.Length];
        for (int i = 0; i < count; i++)
        {
            double white = SimulatedSpan.Gauss(random);
            x[i] = pink ? 0.02 * white : white;
            for (int k = 0; k < Corners.Length && pink; k++)
            {
                states[k] += (white - states[k]) * Share(k, rate);
                x[i] += states[k] * Weights[k];
            }
        }

        return x;
    }

    /// <summary>One-sided density per hertz.</summary>
    internal static double Density(bool pink, double frequency, double rate)
    {
        Complex response = pink ? 0.02 : 1;
        Complex delay = Complex.Exp(-Complex.ImaginaryOne * 2 * Math.PI * frequency / rate);
        for (int k = 0; k < Corners.Length && pink; k++)
        {
            response += Weights[k] * Share(k, rate) / (1 - ((1 - Share(k, rate)) * delay));
        }

        return response.Magnitude * response.Magnitude * 2 / rate;
    }

    /// <summary>Mean square between 20 and 2000 Hz.</summary>
    internal static double Power(bool pink, double rate) => Enumerable.Range(0, 396).Sum(i => 5 * Density(pink, 22.5 + (5 * i), rate));

    private static double Share(int k, double rate) => 1 - Math.Exp(-2 * Math.PI * Corners[k] / rate);
}

/// <summary>What a telephone does to a recording.</summary>
internal static class Recorder
{
    internal static void Process(double[] x, double rate, bool gate)
    {
        double fast = 1 - Math.Exp(-1 / (0.015 * rate)), slow = 1 - Math.Exp(-1 / (0.1 * rate)), power = 0, held = 0, loudest = 0, open = 1;
        double[] powers = new double[x.Length];
        for (int i = 0; i < x.Length; i++)
        {
            power += ((x[i] * x[i]) - power) * fast;
            powers[i] = power;
            loudest = Math.Max(loudest, power);
        }

        for (int i = 0; i < x.Length; i++)
        {
            held += (powers[i] - held) * slow;
            open += ((powers[i] > 0.01 * loudest ? 1 : 0) - open) * fast;
            x[i] *= gate ? (open < 0.01 ? 0 : open) : Math.Pow(Math.Max(held, 1e-3 * loudest) / loudest, -0.25);
        }
    }
}
