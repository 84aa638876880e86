using System.Numerics;

namespace PrinterMath.Tension;

/// <summary>D·e^(zj) + H·e^(iθj) through the block amplitudes of one partial; see <see cref="DecayFit"/>.</summary>
internal sealed class BlockModel(Complex amplitude, Complex exponent, double turn)
{
    private const double FastestDecay = -6;
    private const double LargestTurn = Math.PI / 2;

    private readonly bool _hasLine = !double.IsNaN(turn);
    private Complex _line;
    private double _misfit;

    internal Complex Amplitude { get; private set; } = amplitude;

    internal Complex Exponent { get; private set; } = exponent;

    /// <summary>Mean |residual|² in the weaker half of the blocks.</summary>
    internal double Noise { get; private set; } = 1;

    /// <summary>Variance of the complex exponent; 0 before the fit is judged.</summary>
    internal double Variance { get; private set; }

    internal bool IsSound { get; private set; } = amplitude != 0;

    internal void Improve(ReadOnlySpan<Complex> own, int steps, bool judge)
    {
        if (judge)
        {
            Noise = Math.Max(WeakerHalf(own), 1e-12 * Math.Pow(Amplitude.Magnitude, 2));
        }

        for (int step = 0; step < steps && IsSound; step++)
        {
            Step(own, judge);
        }
    }

    /// <summary>The sequence decays, so its later half is the weaker one; two of its unknowns are at home in the earlier.</summary>
    private double WeakerHalf(ReadOnlySpan<Complex> own)
    {
        double squares = 0;
        int from = own.Length / 2;
        for (int j = from; j < own.Length; j++)
        {
            Complex r = own[j] - (Amplitude * Complex.Exp(Exponent * j)) - (_hasLine ? _line * Turned(j) : 0);
            squares += (r.Real * r.Real) + (r.Imaginary * r.Imaginary);
        }

        return squares / Math.Max(1, own.Length - from - (_hasLine ? 1 : 0));
    }

    private Complex Turned(int j) => Complex.FromPolarCoordinates(1, turn * j);

    private void Step(ReadOnlySpan<Complex> own, bool judge)
    {
        double s0 = 0, s1 = 0, s2 = 0, h = 0, squares = 0, powers = 0;
        Complex t0 = 0, t1 = 0, th = 0, c0 = 0, c1 = 0, grown = 1, q = Complex.Exp(Exponent), d = Amplitude;
        double strength = (d.Real * d.Real) + (d.Imaginary * d.Imaginary);
        for (int j = 0; j < own.Length; j++)
        {
            Complex r = own[j] - (d * grown);
            double size = (grown.Real * grown.Real) + (grown.Imaginary * grown.Imaginary);
            double power = size * strength, w = 1 / (Noise + (_misfit * power));
            Complex back = w * Complex.Conjugate(grown);
            if (_hasLine)
            {
                Complex line = Turned(j);
                r -= _line * line;
                h += w;
                th += w * Complex.Conjugate(line) * r;
                c0 += back * line;
                c1 += j * back * line;
            }

            s0 += w * size;
            s1 += w * size * j;
            s2 += w * size * j * j;
            t0 += back * r;
            t1 += j * back * r;
            squares += w * ((r.Real * r.Real) + (r.Imaginary * r.Imaginary));
            powers += w * power;
            grown *= q;
        }

        Solve(s0, s1, s2, h, c0, c1, t0, t1, th, strength);
        if (judge)
        {
            _misfit = Math.Max(0, _misfit + ((squares - (own.Length - (_hasLine ? 3 : 2))) / powers));
        }
    }

    /// <summary>Normal equations for ΔD, D·Δz and ΔH; the line is eliminated first.</summary>
    private void Solve(double s0, double s1, double s2, double h, Complex c0, Complex c1, Complex t0, Complex t1, Complex th, double strength)
    {
        Complex m01 = s1;
        if (_hasLine)
        {
            s0 -= Squared(c0) / h;
            s2 -= Squared(c1) / h;
            m01 -= c0 * Complex.Conjugate(c1) / h;
            t0 -= c0 * th / h;
            t1 -= c1 * th / h;
        }

        double determinant = (s0 * s2) - Squared(m01);
        if (!(determinant > 1e-9 * s0 * s2) || !double.IsFinite(determinant))
        {
            IsSound = false;
            return;
        }

        Complex change = ((s2 * t0) - (m01 * t1)) / determinant, bend = ((s0 * t1) - (Complex.Conjugate(m01) * t0)) / determinant;
        if (_hasLine)
        {
            _line += (th - (Complex.Conjugate(c0) * change) - (Complex.Conjugate(c1) * bend)) / h;
        }

        Complex z = Exponent + (bend / Amplitude);
        Amplitude += change;
        Exponent = new Complex(Math.Clamp(z.Real, FastestDecay, 0), z.Imaginary);
        Variance = s0 / determinant / strength;
        IsSound = double.IsFinite(z.Real) && Math.Abs(z.Imaginary) < LargestTurn && Amplitude != 0;
    }

    private static double Squared(Complex c) => (c.Real * c.Real) + (c.Imaginary * c.Imaginary);
}
