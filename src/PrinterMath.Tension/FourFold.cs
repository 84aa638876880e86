using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PrinterMath.Tension;

/// <summary>Two stages of butterflies in one pass over memory.</summary>
internal static class FourFold
{
    /// <summary>
    /// Quarters a, b, c, d of length h: a ± w₁b and c ± w₁d, then (a + w₁b) ± w₂(c + w₁d) and (a − w₁b) ∓ i·w₂(c − w₁d), with
    /// w₁ = exp(−2πi·k/2h), w₂ = exp(−2πi·k/4h) given by their cosines and sines.
    /// </summary>
    internal static void Butterflies(Span<double> re, Span<double> im, ReadOnlySpan<double> c1, ReadOnlySpan<double> s1, ReadOnlySpan<double> c2, ReadOnlySpan<double> s2)
    {
        int h = c1.Length, k = 0;
        ref double r = ref MemoryMarshal.GetReference(re), i = ref MemoryMarshal.GetReference(im);
        for (int step = Vector<double>.Count; k + step <= h; k += step)
        {
            Vector<double> w1r = new(c1[k..]), w1i = new(s1[k..]), w2r = new(c2[k..]), w2i = new(s2[k..]);
            Vector<double> ar = At(ref r, k), ai = At(ref i, k), br = At(ref r, k + h), bi = At(ref i, k + h);
            Vector<double> cr = At(ref r, k + (2 * h)), ci = At(ref i, k + (2 * h)), dr = At(ref r, k + (3 * h)), di = At(ref i, k + (3 * h));
            Vector<double> tr = (br * w1r) + (bi * w1i), ti = (bi * w1r) - (br * w1i);
            Vector<double> ur = (dr * w1r) + (di * w1i), ui = (di * w1r) - (dr * w1i);
            Vector<double> sr = cr + ur, si = ci + ui, er = cr - ur, ei = ci - ui;
            Vector<double> pr = (sr * w2r) + (si * w2i), pi = (si * w2r) - (sr * w2i);
            Vector<double> qr = (er * w2r) + (ei * w2i), qi = (ei * w2r) - (er * w2i);
            (ar + tr + pr).StoreUnsafe(ref r, (nuint)k);
            (ai + ti + pi).StoreUnsafe(ref i, (nuint)k);
            (ar - tr + qi).StoreUnsafe(ref r, (nuint)(k + h));
            (ai - ti - qr).StoreUnsafe(ref i, (nuint)(k + h));
            (ar + tr - pr).StoreUnsafe(ref r, (nuint)(k + (2 * h)));
            (ai + ti - pi).StoreUnsafe(ref i, (nuint)(k + (2 * h)));
            (ar - tr - qi).StoreUnsafe(ref r, (nuint)(k + (3 * h)));
            (ai - ti + qr).StoreUnsafe(ref i, (nuint)(k + (3 * h)));
        }

        for (; k < h; k++)
        {
            Complex w1 = new(c1[k], -s1[k]), w2 = new(c2[k], -s2[k]);
            Complex a = new(re[k], im[k]), b = w1 * new Complex(re[k + h], im[k + h]);
            Complex c = new(re[k + (2 * h)], im[k + (2 * h)]), d = w1 * new Complex(re[k + (3 * h)], im[k + (3 * h)]);
            Complex p = w2 * (c + d), q = w2 * (c - d) * -Complex.ImaginaryOne;
            Put(re, im, k, a + b + p);
            Put(re, im, k + h, a - b + q);
            Put(re, im, k + (2 * h), a + b - p);
            Put(re, im, k + (3 * h), a - b - q);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> At(ref double origin, int place) => Vector.LoadUnsafe(ref origin, (nuint)place);

    private static void Put(Span<double> re, Span<double> im, int place, Complex value) => (re[place], im[place]) = (value.Real, value.Imaginary);
}
