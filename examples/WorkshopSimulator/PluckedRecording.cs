namespace WorkshopSimulator;

/// <summary>What a phone hears of a span plucked a few times.</summary>
/// <remarks>
/// Each partial starts with the size that a pluck at a place gives it (mode shape over frequency squared, heard as velocity), decays
/// with its own quality factor and glides down from a slightly high start as the vibration dies. A short finger click, pink room noise
/// and mains hum are added, the sum passes the microphone's bass roll-off and is rounded to 16 bits.
/// </remarks>
internal static class PluckedRecording
{
    internal const int SampleRate = 16_000;

    private const int Partials = 12;
    private const double Peak = 0.6;

    internal static float[] Of(StiffSpan span, IReadOnlyList<SpanMode> modes, PluckScene scene, SeededRandom random)
    {
        double[] heard = new double[(int)(scene.SecondsBetween * SampleRate * scene.Plucks) + (SampleRate / 4)];
        for (int pluck = 0; pluck < scene.Plucks; pluck++)
        {
            int onset = (int)(SampleRate * (0.2 + (pluck * scene.SecondsBetween) + random.Between(0, 0.05)));
            AddPluck(heard.AsSpan(onset), span, modes, scene, random);
        }

        double largest = heard.Max(Math.Abs);
        var noise = new PinkNoise(random.Branch(), SampleRate);
        var microphone = new HighPass(scene.RollOffHertz, SampleRate);
        double humPhase = random.Between(0, 2 * Math.PI);
        for (int i = 0; i < heard.Length; i++)
        {
            double hum = 0;
            for (int harmonic = 1; harmonic <= 3; harmonic++)
            {
                hum += Math.Sin((2 * Math.PI * 50 * harmonic * i / SampleRate) + (harmonic * humPhase)) / harmonic;
            }

            heard[i] = microphone.Next((heard[i] / largest) + (scene.Hum * hum) + (scene.Noise * noise.Next()));
        }

        double scale = Peak / heard.Max(Math.Abs);
        return [.. heard.Select(x => (float)(Math.Round(x * scale * 32767) / 32768))];
    }

    private static void AddPluck(Span<double> into, StiffSpan span, IReadOnlyList<SpanMode> modes, PluckScene scene, SeededRandom random)
    {
        double place = span.LengthMetres * random.Between(0.12, 0.45);
        double size = random.Between(0.6, 1);
        double glide = scene.Glide * size * size;
        double decayOfFirst = scene.Quality / (Math.PI * modes[0].FrequencyHertz);
        double reference = modes[0].ShapeAt(span.LengthMetres / 2);
        for (int n = 0; n < Math.Min(Partials, modes.Count) && modes[n].FrequencyHertz < 0.4 * SampleRate; n++)
        {
            double f = modes[n].FrequencyHertz;
            double amplitude = size * modes[n].ShapeAt(place) / reference * modes[0].FrequencyHertz / f;
            double quality = Math.Clamp(scene.Quality * Math.Pow(n + 1, scene.QualityTrend), 20, 100);
            double decay = quality / (Math.PI * f);
            for (int i = 0; i < into.Length; i++)
            {
                double t = (double)i / SampleRate;
                if (t > 9 * decay)
                {
                    break;
                }

                double cycles = f * (t + (glide * decayOfFirst / 2 * (1 - Math.Exp(-2 * t / decayOfFirst))));
                double attack = 1 - Math.Exp(-t / 0.0005);
                into[i] += amplitude * attack * Math.Exp(-t / decay) * Math.Cos(2 * Math.PI * cycles);
            }
        }

        for (int i = 0; i < into.Length && i < SampleRate / 50; i++)
        {
            into[i] += 0.05 * size * random.Normal(0, 1) * Math.Exp(-i / (0.002 * SampleRate));
        }
    }
}
