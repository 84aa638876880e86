using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>How far shaping moves the path off the one commanded, both axes having the same sequence of positive impulses.</summary>
/// <remarks>
/// A straight move keeps its line whatever the sequence; at corners and on arcs the path is cut to the inside. The largest acceleration for a deviation is
/// <see cref="AllowedAcceleration"/>; axes with different sequences are the subject of <see cref="DelayMatch"/>.
/// Source: derived from the moments of the sequence.
/// </remarks>
/// <example><code>Length cut = PathDeviation.AtCorner(sequence, Angle.FromDegrees(90), Speed.FromMillimetersPerSecond(100), Acceleration.Zero);</code></example>
public static class PathDeviation
{
    private const int StepsForEachImpulse = 16;
    private const int Refinements = 60;

    /// <summary>Least distance of the shaped path from a corner that the command passes at speed.</summary>
    /// <param name="sequence">The sequence, no impulse negative.</param>
    /// <param name="turn">Turning angle θ, 0 (straight on) to 180° (back).</param>
    /// <param name="speed">Speed v with which the command enters and leaves the corner, zero or more.</param>
    /// <param name="acceleration">Acceleration a with which it slows down to v and speeds up from it, zero or more; each ramp lasts at least as long as the sequence.</param>
    /// <returns>The distance. For a symmetric sequence (v·MAD + a·var/2)·sin(θ/2); for others the minimum over time of the distance.</returns>
    /// <exception cref="ArgumentException">An impulse is negative.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static Length AtCorner(ImpulseSequence sequence, Angle turn, Speed speed, Acceleration acceleration)
    {
        RequirePositive(sequence);
        double theta = Turn(turn);
        double v = Guard.NonNegative(speed.MetersPerSecond, nameof(speed));
        double a = Guard.NonNegative(acceleration.MetersPerSecondSquared, nameof(acceleration));
        return Length.FromMeters(Cut(sequence, theta, v, a));
    }

    /// <summary>Largest speed through a corner at which the shaped path comes within a distance of it.</summary>
    /// <param name="sequence">The sequence of at least two impulses, none negative.</param>
    /// <param name="turn">Turning angle θ, greater than 0 and at most 180°.</param>
    /// <param name="deviation">Allowed distance, greater than zero.</param>
    /// <param name="acceleration">Acceleration of the ramps before and after, zero or more; so small that a full stop keeps the distance.</param>
    /// <returns>The speed at which <see cref="AtCorner"/> is the distance.</returns>
    /// <exception cref="ArgumentException">An impulse is negative, or there is only one.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range; for the acceleration the exception states the largest.</exception>
    public static Speed LargestCornerSpeed(ImpulseSequence sequence, Angle turn, Length deviation, Acceleration acceleration)
    {
        RequirePositive(sequence);
        double theta = Guard.Positive(Turn(turn), nameof(turn));
        double allowed = Guard.Positive(deviation.Meters, nameof(deviation));
        double a = Guard.NonNegative(acceleration.MetersPerSecondSquared, nameof(acceleration));
        if (sequence.Count < 2)
        {
            throw Guard.Refused(nameof(sequence), "The sequence is a single impulse, which cuts no corner; it must have at least two.");
        }

        double stopped = Cut(sequence, theta, 0, 1);
        if (a * stopped > allowed)
        {
            throw Guard.Out(nameof(acceleration), a, FormattableString.Invariant($"at most {allowed / stopped:G6} m/s², at which a full stop in the corner takes up the deviation"));
        }

        double high = allowed / Cut(sequence, theta, 1, 0), low = 0;
        for (int i = 0; a > 0 && i < 100 && high - low > 1e-15 * high; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Cut(sequence, theta, middle, a) > allowed ? (low, middle) : (middle, high);
        }

        return Speed.FromMetersPerSecond(a > 0 ? low : high);
    }

    /// <summary>By how much the radius of an arc shrinks at constant speed.</summary>
    /// <param name="sequence">The sequence, no impulse negative.</param>
    /// <param name="radius">Radius R, greater than zero.</param>
    /// <param name="speed">Speed v along the arc, zero or more.</param>
    /// <returns>R·(1 − gain at v/R), about v²·var/(2R); exact once the arc has lasted longer than the sequence.</returns>
    /// <exception cref="ArgumentException">An impulse is negative.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static Length OnArc(ImpulseSequence sequence, Length radius, Speed speed)
    {
        RequirePositive(sequence);
        double r = Guard.Positive(radius.Meters, nameof(radius));
        double v = Guard.NonNegative(speed.MetersPerSecond, nameof(speed));
        return Length.FromMeters(r * (1 - sequence.Gain(Frequency.FromHertz(v / (2 * Math.PI * r)))));
    }

    internal static void RequirePositive(ImpulseSequence sequence)
    {
        foreach (double amplitude in Guard.NotNull(sequence).Amplitudes)
        {
            if (amplitude < 0)
            {
                throw Guard.Refused(nameof(sequence), FormattableString.Invariant($"The sequence has an impulse of {amplitude}; all must be positive."));
            }
        }
    }

    private static double Turn(Angle turn) => Guard.Between(turn.Radians, 0, Math.PI, nameof(turn));

    private static double Cut(ImpulseSequence sequence, double theta, double v, double a)
    {
        double[] times = sequence.Times.ToArray(), amplitudes = sequence.Amplitudes.ToArray();
        double Nearness(double t)
        {
            double behind = 0, ahead = 0;
            for (int i = 0; i < times.Length; i++)
            {
                double s = t - times[i];
                double way = amplitudes[i] * ((v * Math.Abs(s)) + (a * s * s / 2));
                behind += s < 0 ? way : 0;
                ahead += s < 0 ? 0 : way;
            }

            // |u₂·ahead − u₁·behind|, without the loss of digits that the cosine would bring where the directions agree.
            double half = Math.Sin(theta / 2);
            return -Math.Sqrt(((ahead - behind) * (ahead - behind)) + (4 * ahead * behind * half * half));
        }

        int steps = StepsForEachImpulse * times.Length;
        int best = Enumerable.Range(0, steps + 1).MaxBy(i => Nearness(times[^1] * i / steps));
        double low = times[^1] * Math.Max(0, best - 1) / steps, high = times[^1] * Math.Min(steps, best + 1) / steps;
        return Math.Max(0, -GoldenSection.Maximum(Nearness, low, high, Refinements).Value);
    }
}
