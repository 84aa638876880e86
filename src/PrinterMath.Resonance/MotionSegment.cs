using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>A piece of a move along one axis during which acceleration is constant or changes steadily.</summary>
/// <remarks>Equality by value in SI units; the default lasts no time and changes nothing. Positive is the positive direction of the axis.</remarks>
public readonly record struct MotionSegment
{
    private MotionSegment(double seconds, double acceleration, double jerk, double speedStep)
    {
        Seconds = seconds;
        StartAcceleration = acceleration;
        JerkSi = jerk;
        SpeedStep = speedStep;
    }

    /// <summary>How long it lasts.</summary>
    public Duration Duration => Duration.FromSeconds(Seconds);

    /// <summary>Acceleration at its start.</summary>
    public Acceleration Acceleration => Acceleration.FromMetersPerSecondSquared(StartAcceleration);

    /// <summary>Rate at which the acceleration changes.</summary>
    public Jerk Jerk => Jerk.FromMetersPerSecondCubed(JerkSi);

    /// <summary>Sudden change of speed at its start.</summary>
    public Speed StepOfSpeed => Speed.FromMetersPerSecond(SpeedStep);

    internal double Seconds { get; }

    internal double StartAcceleration { get; }

    internal double JerkSi { get; }

    internal double SpeedStep { get; }

    /// <summary>A segment.</summary>
    /// <param name="duration">How long it lasts, zero or more.</param>
    /// <param name="acceleration">Acceleration at its start; zero is steady speed.</param>
    /// <param name="jerk">Rate at which the acceleration changes.</param>
    /// <param name="stepOfSpeed">Sudden change of speed at its start, as in a corner taken without slowing down.</param>
    /// <returns>The segment.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The duration is negative, or a number is not finite.</exception>
    public static MotionSegment Of(Duration duration, Acceleration acceleration, Jerk jerk = default, Speed stepOfSpeed = default) => new(
        Guard.NonNegative(duration.Seconds, nameof(duration)),
        Guard.Finite(acceleration.MetersPerSecondSquared, nameof(acceleration)),
        Guard.Finite(jerk.MetersPerSecondCubed, nameof(jerk)),
        Guard.Finite(stepOfSpeed.MetersPerSecond, nameof(stepOfSpeed)));

    internal static MotionSegment OfSi(double seconds, double acceleration, double jerk = 0) => new(seconds, acceleration, jerk, 0);
}
