namespace PrinterMath.Tension;

/// <summary>The largest torque of a two-phase hybrid motor at a speed: a linear program over two discs, solved by geometry.</summary>
/// <remarks>
/// Largest I_q with I_d² + I_q² ≤ I_m² and (E + R·I_q − X·I_d)² + (R·I_d + X·I_q)² ≤ V², E = K·ω, X = N_r·ω·L. With Z² = R² + X² the second condition is a disc of radius
/// V/Z around (E·X, −E·R)/Z²; the highest point of two discs is the top of one or an upper crossing of both circles.
/// Source: P. Acarnley 2002, Stepping Motors, 4th ed., ch. 5 (from memory), for the machine.
/// </remarks>
internal static class StepperEnvelope
{
    /// <summary>I_q in amperes, never negative.</summary>
    internal static double TorqueCurrent(double speed, double k, double resistance, double inductance, double rotorTeeth, double voltage, double peak)
    {
        double reactance = rotorTeeth * speed * inductance;
        double impedance = Math.Sqrt((resistance * resistance) + (reactance * reactance));
        double emf = k * speed / impedance;
        double x = emf * reactance / impedance;
        double y = -emf * resistance / impedance;
        return Math.Max(0, HighestCommonPoint(peak, x, y, voltage / impedance));
    }

    /// <summary>Ordinate of the highest point that a disc around the origin and a disc around (x, y) share; 0 when they do not meet.</summary>
    private static double HighestCommonPoint(double r0, double x, double y, double r1)
    {
        double top = y + r1;
        if ((x * x) + (top * top) <= r0 * r0)
        {
            return top;
        }

        double below = r0 - y;
        if ((x * x) + (below * below) <= r1 * r1)
        {
            return r0;
        }

        double squared = (x * x) + (y * y);
        double along = ((r0 * r0) - (r1 * r1) + squared) / (2 * squared);
        double half = (r0 * r0 / squared) - (along * along);
        return half < 0 ? 0 : (along * y) + (Math.Sqrt(half) * Math.Abs(x));
    }
}
