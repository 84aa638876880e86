namespace PrinterMath.Resonance;

/// <summary>One decaying oscillation exp(−decay·n)·(cosine·cos(angle·n) + sine·sin(angle·n)), n counting samples.</summary>
internal readonly record struct DecayTerm(double Decay, double Angle, double Cosine, double Sine)
{
    internal const int Parameters = 4;

    internal double Amplitude => Math.Sqrt((Cosine * Cosine) + (Sine * Sine));

    /// <summary>Sum of squares over a record, from the envelope: A²/2·Σexp(−2·decay·n).</summary>
    internal double Energy(int count) => Amplitude * Amplitude / 2 * EnvelopeEnergy(Decay, count);

    internal static double EnvelopeEnergy(double decay, int count) =>
        Math.Abs(decay) * count < 1e-9 ? count : (1 - Math.Exp(-2 * decay * count)) / (1 - Math.Exp(-2 * decay));
}
