namespace PrinterMath.Resonance;

/// <summary>Vibration that is left after a sequence of impulses, as a ratio of that after one impulse of the same sum.</summary>
internal static class Residual
{
    /// <summary>C = ΣA·exp(ζωt)·cos(ω_d t) and S = ΣA·exp(ζωt)·sin(ω_d t).</summary>
    internal static (double Cosine, double Sine) Components(ReadOnlySpan<double> amplitudes, ReadOnlySpan<double> times, double omega, double zeta)
    {
        double damped = omega * Math.Sqrt(1 - (zeta * zeta));
        double cosine = 0, sine = 0;
        for (int i = 0; i < amplitudes.Length; i++)
        {
            double size = amplitudes[i] * Math.Exp(zeta * omega * times[i]);
            (double s, double c) = Math.SinCos(damped * times[i]);
            cosine += size * c;
            sine += size * s;
        }

        return (cosine, sine);
    }

    /// <summary>V = exp(−ζω t_n)·√(C² + S²).</summary>
    internal static double Ratio(ReadOnlySpan<double> amplitudes, ReadOnlySpan<double> times, double omega, double zeta)
    {
        (double cosine, double sine) = Components(amplitudes, times, omega, zeta);
        return Math.Exp(-zeta * omega * times[^1]) * Math.Sqrt((cosine * cosine) + (sine * sine));
    }
}
