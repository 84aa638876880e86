using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>A belt or a string plucked in a noisy room, and the truth behind the recording.</summary>
/// <remarks>
/// Fundamentals 30 to 400 Hz log-uniform; rates 8 to 96 kHz; belts of Q 20 to 100, strings of Q 200 to 1000; signal-to-noise 10 to 40 dB over 20 to 2000 Hz in
/// the first half second. Drawn again until two partials, one of them odd, have an energy of at least 20 dB over half the noise density.
/// </remarks>
public sealed record SimulatedSpan(SampledSignal Signal, double FirstPartial, double Glide)
{
    private static readonly double[] Rates = [8_000, 11_025, 16_000, 22_050, 32_000, 44_100, 48_000, 96_000];

    /// <summary>The partials that were planted.</summary>
    public required IReadOnlyList<SimulatedVoice> Voices { get; init; }

    /// <summary>B of the stiff-string law.</summary>
    public required double Inharmonicity { get; init; }

    /// <summary>Time of the pluck in s.</summary>
    public required double Start { get; init; }

    /// <summary>Standard deviation of a sample of the noise where the noise is white, else 0.</summary>
    public required double WhiteDeviation { get; init; }

    public static SimulatedSpan Make(Hardship hardship, int seed)
    {
        Random random = SeededRandom.For(seed, (int)hardship);
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
        List<SimulatedVoice> voices = Voiced(hardship, f, stiffness, place, quality, rate, random);
        bool pink = hardship == Hardship.PinkNoise || random.Next(2) == 0;
        double decibels = 10 + (30 * random.NextDouble()), heard = voices.Sum(v => v.MeanPower(0.5));
        double scale = heard / RoomNoise.Power(pink, rate) * Math.Pow(10, -decibels / 10);
        int[] above = [.. voices.Where(v => v.Energy / (RoomNoise.Density(pink, v.Frequency, rate) * scale / 2) > 100).Select(v => v.Number)];
        if (f < 30 || f > 400 || above.Length < 2 || above.All(n => n % 2 == 0))
        {
            return null;
        }

        double seconds = start + Math.Max(hardship == Hardship.LongString ? 1.5 : 0.7, 25 / f);
        double[] x = new double[(int)(seconds * rate)];
        voices = Phased(voices, random);
        voices.ForEach(v => v.Ring(x, rate, start, 1, 1, glide, quality / (Math.PI * f)));
        if (hardship == Hardship.NeighbourRings)
        {
            double apart = (random.Next(2) == 0 ? 1 : -1) * 0.004 * Math.Pow(10, random.NextDouble()), loudness = 0.15 + (0.35 * random.NextDouble());
            Phased(voices, random).ForEach(v => v.Ring(x, rate, start, 1 + apart, loudness, 0, 1));
        }

        AddRoom(x, rate, pink, Math.Sqrt(scale), hum, mains, random);
        if (hardship is Hardship.LevelControl or Hardship.Gate)
        {
            Recorder.Process(x, rate, hardship == Hardship.Gate);
        }

        return new SimulatedSpan(SampledSignal.FromSamples(x, Frequency.FromHertz(rate)), f, glide)
        {
            Voices = voices,
            Inharmonicity = stiffness,
            Start = start,
            WhiteDeviation = pink ? 0 : Math.Sqrt(scale),
        };
    }

    /// <summary>Partials of a pinned stiff span plucked at a place along it, a ratio; their phases are still to be drawn.</summary>
    private static List<SimulatedVoice> Voiced(Hardship hardship, double f, double stiffness, double place, double quality, double rate, Random random)
    {
        List<SimulatedVoice> voices = [];
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
            voices.Add(new SimulatedVoice(n, natural, amplitude, quality / (Math.PI * natural) * Math.Sqrt(n), 0));
        }

        return voices;
    }

    private static List<SimulatedVoice> Phased(List<SimulatedVoice> voices, Random random) =>
        voices.ConvertAll(v => v with { Phase = 2 * Math.PI * random.NextDouble() });

    private static void AddRoom(double[] x, double rate, bool pink, double scale, double hum, double mains, Random random)
    {
        double largest = x.Max(Math.Abs);
        double[] noise = RoomNoise.Make(pink, x.Length, rate, random);
        for (int i = 0; i < x.Length; i++)
        {
            double turn = 2 * Math.PI * mains * i / rate;
            x[i] += (scale * noise[i]) + (hum * largest * (Math.Sin(turn) + (0.5 * Math.Sin((2 * turn) + 1)) + (0.3 * Math.Sin((3 * turn) + 2))));
        }
    }

    internal static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
