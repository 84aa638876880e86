using System.Numerics;

namespace PrinterMath.Resonance;

/// <summary>A pole p = ω_n·(−ζ + j√(1 − ζ²)) by the logarithms of ω_n in rad/s and of ζ, and its residue r: the response holds r/(jω − p) + r*/(jω − p*).</summary>
internal readonly record struct ResponsePole(double LogOmega, double LogDamping, Complex Residue)
{
    internal double Omega => Math.Exp(LogOmega);

    internal double Hertz => Omega / (2 * Math.PI);

    internal double Damping => Math.Exp(LogDamping);

    internal Complex Place => Omega * new Complex(-Damping, Math.Sqrt(1 - (Damping * Damping)));

    /// <summary>dp/d ln ζ = ζω_n·(−1 − jζ/√(1 − ζ²)); dp/d ln ω_n is p itself.</summary>
    internal Complex ByLogDamping => Damping * Omega * new Complex(-1, -Damping / Math.Sqrt(1 - (Damping * Damping)));

    /// <summary>|r|/(ζω_n): what the pole alone puts on the response at its natural frequency, but for terms of the order of ζ.</summary>
    internal double Height => Residue.Magnitude / (Damping * Omega);

    internal static ResponsePole At(double hertz, double damping) => new(Math.Log(2 * Math.PI * hertz), Math.Log(damping), Complex.Zero);
}
