namespace PrinterMath.Resonance;

/// <summary>Expected density of one term and its derivatives with respect to the term's parameters, over the lines fitted.</summary>
/// <remarks>
/// With a = ζω_n, ω_d = ω_n√(1 − ζ²), q = ζ/√(1 − ζ²), C = e^(−a|τ|)·cos ω_dτ and S = e^(−a|τ|)·sin ω_d|τ|, unit mean square under a level excitation has
/// autocorrelation C + qS (receptance) or C − qS (mobility). With β = 1/(1 − 4ζ²), accelerance is (1 + β)·mobility − β·receptance + a level 4ζβ/ω_n: from
/// ω⁴ = D − ω_n⁴ + (2 − 4ζ²)ω_n²ω²; its power is that of the part without the level.
/// Source: S. H. Crandall, W. D. Mark, Random Vibration in Mechanical Systems, 1963, section 2.2 (from memory) for the first two.
/// </remarks>
internal sealed class TermSpectrum
{
    private TermSpectrum(double[] density, double[] byAngle, double[] byDamping)
    {
        Density = density;
        ByAngle = byAngle;
        ByDamping = byDamping;
    }

    /// <summary>The density; also its derivative with respect to the logarithm of the power.</summary>
    internal double[] Density { get; }

    internal double[] ByAngle { get; }

    internal double[] ByDamping { get; }

    internal static TermSpectrum Of(SpectralTerm term, ResponseShape shape, WindowKernel kernel, double rate, int first, int count)
    {
        double angle = term.Angle, zeta = term.Damping, power = Math.Exp(term.LogPower);
        double root = Math.Sqrt(1 - (zeta * zeta)), q = zeta / root, a = zeta * angle, ringing = angle * root;
        double[] c = new double[count], s = new double[count], lagC = new double[count], lagS = new double[count];
        kernel.Evaluate(a, ringing, first, (c, lagC), (s, lagS));
        (double odd, double level) = Weights(shape, zeta, angle);
        double beta = 1 / (1 - (4 * zeta * zeta));
        double oddByDamping = odd * (1 / (root * root)) * q, flat = 2 * level / rate;
        double flatByDamping = flat * (1 + (8 * zeta * zeta * beta));
        if (shape == ResponseShape.Accelerance)
        {
            oddByDamping -= 16 * zeta * zeta * beta * beta * q;
        }

        double[] density = new double[count], byAngle = new double[count], byDamping = new double[count];
        for (int i = 0; i < count; i++)
        {
            density[i] = power * (c[i] + (odd * q * s[i]) + flat);
            byAngle[i] = power * ((-a * lagC[i]) - (ringing * lagS[i]) + (odd * q * ((ringing * lagC[i]) - (a * lagS[i]))) - flat);
            byDamping[i] = power * (
                (-a * lagC[i]) + (a * q * lagS[i]) + (odd * q * ((-a * lagS[i]) - (a * q * lagC[i]))) + (oddByDamping * s[i]) + flatByDamping);
        }

        return new TermSpectrum(density, byAngle, byDamping);
    }

    /// <summary>Factor of qS, and the mean square per unit bandwidth of the level part in samples.</summary>
    private static (double Odd, double Level) Weights(ResponseShape shape, double zeta, double angle) => shape switch
    {
        ResponseShape.Mobility => (-1, 0),
        ResponseShape.Accelerance => (-(1 + (2 / (1 - (4 * zeta * zeta)))), 4 * zeta / (angle * (1 - (4 * zeta * zeta)))),
        _ => (1, 0),
    };
}
