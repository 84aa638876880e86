namespace PrinterMath.Resonance;

/// <summary>One mode or tone of a spectrum: ln of its mean square, ln of its natural frequency in rad per sample, ln of its damping ratio.</summary>
internal sealed record SpectralTerm(double LogPower, double LogAngle, double LogDamping, bool IsTone)
{
    internal const double LargestDamping = 0.42;

    internal double Angle => Math.Exp(LogAngle);

    internal double Damping => IsTone ? 0 : Math.Exp(LogDamping);

    internal int Parameters => IsTone ? 2 : 3;

    /// <summary>Half-power bandwidth 2ζf_n in lines of a spectrum of segments that long.</summary>
    internal double BandwidthLines(int length) => Damping * Angle * length / Math.PI;

    internal static SpectralTerm Tone(double power, double angle) => new(Math.Log(power), Math.Log(angle), 0, true);

    internal static SpectralTerm Mode(double power, double angle, double damping) =>
        new(Math.Log(power), Math.Log(angle), Math.Log(Math.Min(damping, LargestDamping)), false);

    /// <summary>Moved by a step, no further than a factor of two in damping, and never out of bounds.</summary>
    internal SpectralTerm Moved(double power, double angle, double damping, double angleLimit, double leastDamping) => this with
    {
        LogPower = LogPower + Math.Clamp(power, -2, 2),
        LogAngle = Math.Min(Math.Log(Math.PI), LogAngle + Math.Clamp(angle, -angleLimit, angleLimit)),
        LogDamping = IsTone ? 0 : Math.Clamp(LogDamping + Math.Clamp(damping, -0.7, 0.7), Math.Log(leastDamping), Math.Log(LargestDamping)),
    };
}
