using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PrinterMath.Measurement;

/// <summary>One stage of a transform of 4·h points made of four of h points each, the quarters in the order 0, 2, 1, 3 of the index modulo 4.</summary>
/// <remarks>
/// With W = exp(−2πi·k/4h): t₁ = W²·b, t₂ = W·c, t₃ = W³·d; X_k = a + t₁ + t₂ + t₃, X_{k+h} = a − t₁ − i(t₂ − t₃), X_{k+2h} = a + t₁ − t₂ − t₃, X_{k+3h} = a − t₁ + i(t₂ − t₃).
/// Source: J. W. Cooley, J. W. Tukey 1965, "An algorithm for the machine calculation of complex Fourier series", Math. Comp. 19, 297-301, with factors of four.
/// </remarks>
internal sealed class FourierStage
{
    private readonly int _h;
    private readonly double[] _roots;

    /// <summary>Roots W, W², W³, each as h cosines and h sines.</summary>
    internal FourierStage(int h)
    {
        _h = h;
        _roots = new double[6 * h];
        for (int power = 1; power <= 3; power++)
        {
            UnitRoots.Fill(power, 4L * h, _roots.AsSpan(2 * h * (power - 1), h), _roots.AsSpan((2 * h * (power - 1)) + h, h));
        }
    }

    internal void Run(Span<double> re, Span<double> im)
    {
        for (int start = 0; start < re.Length; start += 4 * _h)
        {
            Combine(ref re[start], ref im[start]);
        }
    }

    private void Combine(ref double r, ref double i)
    {
        int h = _h, k = 0;
        ref double w = ref MemoryMarshal.GetArrayDataReference(_roots);
        for (int lanes = Vector<double>.Count; k + lanes <= h; k += lanes)
        {
            Vector<double> ar = At(ref r, k), ai = At(ref i, k);
            (Vector<double> br, Vector<double> bi) = Turned(ref w, (2 * h) + k, h, At(ref r, k + h), At(ref i, k + h));
            (Vector<double> cr, Vector<double> ci) = Turned(ref w, k, h, At(ref r, k + (2 * h)), At(ref i, k + (2 * h)));
            (Vector<double> dr, Vector<double> di) = Turned(ref w, (4 * h) + k, h, At(ref r, k + (3 * h)), At(ref i, k + (3 * h)));
            Vector<double> sr = ar + br, si = ai + bi, er = ar - br, ei = ai - bi;
            Vector<double> pr = cr + dr, pi = ci + di, qr = cr - dr, qi = ci - di;
            (sr + pr).StoreUnsafe(ref r, (nuint)k);
            (si + pi).StoreUnsafe(ref i, (nuint)k);
            (er + qi).StoreUnsafe(ref r, (nuint)(k + h));
            (ei - qr).StoreUnsafe(ref i, (nuint)(k + h));
            (sr - pr).StoreUnsafe(ref r, (nuint)(k + (2 * h)));
            (si - pi).StoreUnsafe(ref i, (nuint)(k + (2 * h)));
            (er - qi).StoreUnsafe(ref r, (nuint)(k + (3 * h)));
            (ei + qr).StoreUnsafe(ref i, (nuint)(k + (3 * h)));
        }

        if (k < h)
        {
            Rest(MemoryMarshal.CreateSpan(ref r, 4 * h), MemoryMarshal.CreateSpan(ref i, 4 * h), k);
        }
    }

    private void Rest(Span<double> re, Span<double> im, int from)
    {
        int h = _h;
        for (int k = from; k < h; k++)
        {
            Complex a = new(re[k], im[k]);
            Complex b = Root(2, k) * new Complex(re[k + h], im[k + h]);
            Complex c = Root(1, k) * new Complex(re[k + (2 * h)], im[k + (2 * h)]);
            Complex d = Root(3, k) * new Complex(re[k + (3 * h)], im[k + (3 * h)]);
            Complex turned = (c - d) * -Complex.ImaginaryOne;
            (re[k], im[k]) = Parts(a + b + c + d);
            (re[k + h], im[k + h]) = Parts(a - b + turned);
            (re[k + (2 * h)], im[k + (2 * h)]) = Parts(a + b - c - d);
            (re[k + (3 * h)], im[k + (3 * h)]) = Parts(a - b - turned);
        }
    }

    private Complex Root(int power, int k) => new(_roots[(2 * _h * (power - 1)) + k], -_roots[(2 * _h * (power - 1)) + _h + k]);

    private static (double Re, double Im) Parts(Complex z) => (z.Real, z.Imaginary);

    /// <summary>(re + i·im)·(c − i·s), the cosines at a place and the sines h further on.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (Vector<double> Re, Vector<double> Im) Turned(ref double roots, int place, int h, Vector<double> re, Vector<double> im)
    {
        Vector<double> c = At(ref roots, place), s = At(ref roots, place + h);
        return ((re * c) + (im * s), (im * c) - (re * s));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> At(ref double origin, int place) => Vector.LoadUnsafe(ref origin, (nuint)place);
}
