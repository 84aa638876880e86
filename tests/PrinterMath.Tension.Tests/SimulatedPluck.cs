using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>Conditions under which a pluck is simulated; frequencies in Hz, levels relative to the largest sample.</summary>
public sealed record PluckScene
{
    public double SampleRate { get; init; } = 44_100;

    public double Seconds { get; init; } = 1.2;

    public double LowestFundamental { get; init; } = 40;

    public double HighestFundamental { get; init; } = 300;

    public double LowestQuality { get; init; } = 30;

    public double HighestQuality { get; init; } = 100;

    /// <summary>Largest sample over the RMS of the noise, in dB.</summary>
    public double NoiseDecibels { get; init; } = 40;

    public bool PinkNoise { get; init; }

    /// <summary>A first-order high-pass at 150 Hz stands for a small microphone.</summary>
    public bool WeakBass { get; init; }

    /// <summary>Standard deviation of each partial about the stiff-string law, a ratio.</summary>
    public double Stray { get; init; }

    /// <summary>Rise of the frequency at the first instant, a ratio; it falls with the square of the amplitude.</summary>
    public double Glide { get; init; }

    /// <summary>Amplitude of a 50 Hz hum with harmonics.</summary>
    public double Hum { get; init; }

    public int Plucks { get; init; } = 1;
}

/// <summary>A simulated pluck and the truth behind it.</summary>
public sealed record SimulatedPluck(SampledSignal Signal, double FirstPartial, double Glide)
{
    /// <summary>
    /// Decaying partials of a pinned stiff string plucked at a random place: the square of each natural frequency is a·n² + b·n⁴, the amplitude
    /// sin(nπ·place)/n. Phases are summed sample by sample from the momentary frequency.
    /// </summary>
    public static SimulatedPluck Make(PluckScene scene, int seed)
    {
        Random random = SeededRandom.For(seed, 0);
        double first = scene.LowestFundamental * Math.Pow(scene.HighestFundamental / scene.LowestFundamental, random.NextDouble());
        double stiffShare = Math.Pow(10, -5 + (1.9 * random.NextDouble()));
        double quality = scene.LowestQuality + ((scene.HighestQuality - scene.LowestQuality) * random.NextDouble());
        double place = 0.1 + (0.4 * random.NextDouble());
        double rate = scene.SampleRate;
        double[] x = new double[(int)(scene.Seconds * rate)];
        double gap = (scene.Seconds - 0.15) / scene.Plucks;
        for (int n = 1; n <= 30; n++)
        {
            double order = (double)n * n;
            double natural = first * Math.Sqrt((order * (1 - stiffShare)) + (order * order * stiffShare)) * (1 + (scene.Stray * Gauss(random)));
            if (natural > 0.45 * rate)
            {
                break;
            }

            double amplitude = Math.Abs(Math.Sin(n * Math.PI * place)) / n * Math.Exp(0.4 * Gauss(random));
            amplitude *= scene.WeakBass ? 1 / Math.Sqrt(1 + (150 / natural * (150 / natural))) : 1;
            double decay = quality / (Math.PI * natural) * Math.Sqrt(n);
            for (int p = 0; p < scene.Plucks; p++)
            {
                Ring(x, rate, 0.12 + (p * gap) + (0.02 * random.NextDouble()), natural, amplitude, decay, scene.Glide, quality / (Math.PI * first), random.NextDouble());
            }
        }

        AddNoise(x, scene, random);
        return new SimulatedPluck(SampledSignal.FromSamples(x, Frequency.FromHertz(rate)), first, scene.Glide);
    }

    /// <summary>A knock: a handful of modes at random frequencies, with noise.</summary>
    public static SampledSignal Knock(double rate, int seed)
    {
        Random random = SeededRandom.For(seed, 0);
        double[] x = new double[(int)rate];
        int modes = random.Next(4, 16);
        for (int m = 0; m < modes; m++)
        {
            double natural = 50 * Math.Pow(60, random.NextDouble());
            double decay = (8 + (52 * random.NextDouble())) / (Math.PI * natural);
            Ring(x, rate, 0.15, natural, Math.Exp(Gauss(random)), decay, 0, 1, random.NextDouble());
        }

        AddNoise(x, new PluckScene { NoiseDecibels = 40, PinkNoise = seed % 2 == 0, SampleRate = rate }, random);
        return SampledSignal.FromSamples(x, Frequency.FromHertz(rate));
    }

    private static void Ring(double[] x, double rate, double start, double frequency, double amplitude, double decay, double glide, double glideDecay, double turn)
    {
        int from = (int)(start * rate) + 1;
        double phase = 2 * Math.PI * turn, lag = (from / rate) - start;
        double level = amplitude * Math.Exp(-lag / decay), rise = glide * Math.Exp(-2 * lag / glideDecay);
        double levelStep = Math.Exp(-1 / (decay * rate)), riseStep = Math.Exp(-2 / (glideDecay * rate));
        int until = Math.Min(x.Length, from + (int)(12 * decay * rate));
        for (int i = from; i < until; i++)
        {
            double onset = Math.Min(1, ((i / rate) - start) / 0.002);
            x[i] += level * onset * Math.Sin(phase);
            phase += 2 * Math.PI * frequency * (1 + rise) / rate;
            level *= levelStep;
            rise *= riseStep;
        }
    }

    private static void AddNoise(double[] x, PluckScene scene, Random random)
    {
        double peak = x.Max(Math.Abs);
        double rms = peak * Math.Pow(10, -scene.NoiseDecibels / 20);
        double slow = 0, middle = 0;
        for (int i = 0; i < x.Length; i++)
        {
            double white = Gauss(random);
            slow += ((2 * white) - slow) * 0.005;
            middle += (white - middle) * 0.1;
            double noise = scene.PinkNoise ? (10 * slow) + (2 * middle) + (0.3 * white) : white;
            double t = i / scene.SampleRate;
            double hum = Math.Sin(2 * Math.PI * 50.02 * t) + (0.5 * Math.Sin((2 * Math.PI * 100.04 * t) + 1)) + (0.3 * Math.Sin((2 * Math.PI * 150.06 * t) + 2));
            x[i] += (rms * noise) + (scene.Hum * peak * hum);
        }
    }

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
