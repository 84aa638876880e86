namespace PrinterMath.Resonance;

/// <summary>A moment at which speed, acceleration or jerk changes suddenly; the state just after it and the changes, in SI units.</summary>
internal readonly record struct MotionKnot(
    double Time, double Position, double Speed, double Acceleration, double Jerk, double SpeedChange, double AccelerationChange, double JerkChange)
{
    /// <summary>The state a while after the knot.</summary>
    internal (double Position, double Speed, double Acceleration) After(double s) => (
        Position + (s * (Speed + (s * ((Acceleration / 2) + (s * Jerk / 6))))),
        Speed + (s * (Acceleration + (s * Jerk / 2))),
        Acceleration + (s * Jerk));

    /// <summary>The next knot, so many seconds later, with its changes.</summary>
    internal MotionKnot Next(double time, double speedChange, double accelerationChange, double jerkChange)
    {
        (double position, double speed, double acceleration) = After(time - Time);
        return new MotionKnot(
            time, position, speed + speedChange, acceleration + accelerationChange, Jerk + jerkChange, speedChange, accelerationChange, jerkChange);
    }
}
