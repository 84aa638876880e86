namespace PrinterMath.Resonance.Tests;

/// <summary>A damped oscillator x″ + 2ζωx′ + ω²x = ω²·u(t), stepped by its exact 2 × 2 state transition while u is constant.</summary>
internal sealed class Oscillator(double hertz, double zeta)
{
    private readonly double _omega = 2 * Math.PI * hertz;

    /// <summary>Envelope √(x² + ((x′ + ζωx)/ω_d)²) at a time after all steps, starting at rest; steps are (time, change of u).</summary>
    internal double EnvelopeAt(double end, IEnumerable<(double Time, double Change)> steps)
    {
        double x = 0, v = 0, u = 0, now = 0;
        foreach ((double time, double change) in steps.OrderBy(step => step.Time))
        {
            (x, v) = Advance(x, v, u, time - now);
            now = time;
            u += change;
        }

        (x, v) = Advance(x, v, u, end - now);
        double damped = _omega * Math.Sqrt(1 - (zeta * zeta));
        return Math.Sqrt(Math.Pow(x - u, 2) + Math.Pow((v + (zeta * _omega * (x - u))) / damped, 2));
    }

    private (double X, double V) Advance(double x, double v, double u, double dt)
    {
        double damped = _omega * Math.Sqrt(1 - (zeta * zeta));
        double fade = Math.Exp(-zeta * _omega * dt);
        double c = Math.Cos(damped * dt), s = Math.Sin(damped * dt) / damped;
        double y = x - u;
        return (
            u + (fade * ((y * (c + (zeta * _omega * s))) + (v * s))),
            fade * ((v * (c - (zeta * _omega * s))) - (y * _omega * _omega * s)));
    }
}
