namespace WorkshopSimulator;

/// <summary>What a sensor on the head records of one tap askew: rest, the blow, and both axes ringing down.</summary>
/// <remarks>
/// The blow is half a sine wave of force, in stairs of 1/64 of its length; between stairs and samples every mode moves exactly. Samples are
/// taken a little off the beat, stamped when they are taken by a clock that runs slightly wrong, and rounded.
/// </remarks>
internal static class TappedHead
{
    private const double Seconds = 1;
    private const double TapAt = 0.1;
    private const int Stairs = 64;
    private const double StandardGravity = 9.80665;

    internal static AccelerationSample[] Record(HeadTruth head, SeededRandom random)
    {
        OscillatorState[] x = [.. head.ModesX.Select(mode => new OscillatorState(mode))];
        OscillatorState[] y = [.. head.ModesY.Select(mode => new OscillatorState(mode))];
        OscillatorState[] all = [.. x, .. y];
        double start = random.Between(10, 100);
        var samples = new AccelerationSample[(int)(Seconds * head.RateHertz)];
        double now = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            double time = Math.Max(now, ((i + 1) / head.RateHertz) + random.Normal(0, head.JitterSeconds));
            Advance(all, now, time, head.TapSeconds);
            now = time;
            double force = Force(time, head.TapSeconds);
            samples[i] = new AccelerationSample(
                Math.Round(start + (time * (1 + head.ClockError)), 6),
                Seen(x.Sum(mode => mode.AccelerationUnder(force)) + (head.LeanX * StandardGravity)),
                Seen(y.Sum(mode => mode.AccelerationUnder(force)) + (head.LeanY * StandardGravity)),
                Seen(StandardGravity * Math.Sqrt(1 - (head.LeanX * head.LeanX) - (head.LeanY * head.LeanY))));
        }

        return samples;

        double Seen(double acceleration) => Math.Round(acceleration + random.Normal(0, head.NoiseMetresPerSecondSquared), 2);
    }

    private static void Advance(OscillatorState[] modes, double from, double to, double tap)
    {
        double now = from;
        while (now < to)
        {
            double stair = tap / Stairs;
            bool touched = now + (stair / 2) > TapAt && now + (stair / 2) < TapAt + tap;
            double next = touched ? Math.Min(to, now + stair) : to;
            if (!touched && now < TapAt)
            {
                next = Math.Min(next, TapAt);
            }

            double force = Force((now + next) / 2, tap);
            foreach (OscillatorState mode in modes)
            {
                mode.Advance(next - now, force);
            }

            now = next;
        }
    }

    private static double Force(double time, double tap) =>
        time > TapAt && time < TapAt + tap ? Math.Sin(Math.PI * (time - TapAt) / tap) : 0;
}
