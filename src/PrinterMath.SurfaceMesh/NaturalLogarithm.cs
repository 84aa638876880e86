using System.Numerics;
using System.Runtime.CompilerServices;

namespace PrinterMath.SurfaceMesh;

/// <summary>ln of several positive, normal numbers at a time, to about 10⁻¹⁶ of the larger of its value and 1.</summary>
/// <remarks>
/// x = 2ᵏ·m, m from √½ to √2; ln m = 2 artanh s = s·(2 + R(s²)), s = (m − 1)/(m + 1), R a polynomial of degree 7 within 2⁻⁵⁸.
/// Source: the coefficients of FDLIBM's e_log.c, Sun Microsystems 1993 (from memory; checked against <see cref="Math.Log(double)"/> by a test).
/// </remarks>
internal static class NaturalLogarithm
{
    private const long OneHalfRoot = 0x3FE6A09E00000000;
    private const long Mantissa = 0x000FFFFFFFFFFFFF;

    /// <summary>2⁵² as bits: a whole number below it, put into its mantissa, is that number more.</summary>
    private const long Shift = 0x4330000000000000;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector<double> Of(Vector<double> x)
    {
        Vector<long> bits = Vector.AsVectorInt64(x), offset = bits - new Vector<long>(OneHalfRoot);
        Vector<long> exponent = Vector.ShiftRightArithmetic(offset, 52) + new Vector<long>(2048);
        Vector<double> k = Vector.AsVectorDouble(exponent | new Vector<long>(Shift)) - new Vector<double>(4503599627370496.0 + 2048);
        Vector<double> m = Vector.AsVectorDouble((offset & new Vector<long>(Mantissa)) + new Vector<long>(OneHalfRoot));
        Vector<double> s = (m - Vector<double>.One) / (m + Vector<double>.One), z = s * s;
        Vector<double> squared = z * z;

        // In pairs (Estrin), so that no product waits for more than three others.
        Vector<double> high = Fused.Add(Fused.Add(new(1.479819860511658591e-01), z, new(1.531383769920937332e-01)), z, new(1.818357216161805012e-01));
        Vector<double> middle = Fused.Add(new(2.222219843214978396e-01), z, new(2.857142874366239149e-01));
        Vector<double> low = Fused.Add(new(3.999999999940941908e-01), z, new(6.666666666666735130e-01));
        Vector<double> r = Fused.Add(Fused.Add(high, squared, middle), squared, low);
        return Fused.Add(k, new(0.6931471805599453), s * Fused.Add(r, z, new(2)));
    }
}
