using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace PrinterMath.SurfaceMesh;

/// <summary>Heights of many places from cell polynomials. It decides the speed of a whole map, hence four places at a time and no bounds checks.</summary>
internal static class CellEvaluation
{
    private const int Lanes = 4;

    internal static void Bilinear(CellPolynomials cells, GridSource outside, ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs) =>
        Evaluate<BilinearCell>(cells, outside, xs, ys, zs);

    internal static void Bicubic(CellPolynomials cells, GridSource outside, ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs) =>
        Evaluate<BicubicCell>(cells, outside, xs, ys, zs);

    private interface ICell
    {
        static abstract double One(ref double c, double t, double s);

        static abstract Vector256<double> Four(ref double c, Vector128<int> cell, Vector256<double> t, Vector256<double> s);
    }

    private static void Evaluate<TCell>(CellPolynomials cells, GridSource outside, ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs)
        where TCell : ICell
    {
        ref double coefficients = ref MemoryMarshal.GetArrayDataReference(cells.Coefficients);
        int k = 0;
        if (Avx2.IsSupported && Fma.IsSupported && cells.X.IsEven && cells.Y.IsEven && cells.Coefficients.Length < int.MaxValue / 2)
        {
            EvenAxis columns = cells.X.Even(), rows = cells.Y.Even();
            ref double x = ref MemoryMarshal.GetReference(xs), y = ref MemoryMarshal.GetReference(ys), z = ref MemoryMarshal.GetReference(zs);
            Vector128<int> width = Vector128.Create(cells.X.Cells);
            for (; k <= zs.Length - Lanes; k += Lanes)
            {
                Vector256<double> px = Vector256.LoadUnsafe(ref x, (nuint)k), py = Vector256.LoadUnsafe(ref y, (nuint)k);
                if (!(columns.Hold(px) && rows.Hold(py)))
                {
                    Evaluate<TCell>(cells, outside, xs.Slice(k, Lanes), ys.Slice(k, Lanes), zs.Slice(k, Lanes), ref coefficients);
                    continue;
                }

                Vector128<int> column = columns.Locate(px, out Vector256<double> t), row = rows.Locate(py, out Vector256<double> s);
                TCell.Four(ref coefficients, (row * width) + column, t, s).StoreUnsafe(ref z, (nuint)k);
            }
        }

        Evaluate<TCell>(cells, outside, xs[k..], ys[k..], zs[k..], ref coefficients);
    }

    private static void Evaluate<TCell>(
        CellPolynomials cells, GridSource outside, ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs, ref double coefficients)
        where TCell : ICell
    {
        for (int k = 0; k < xs.Length && k < ys.Length && k < zs.Length; k++)
        {
            double x = xs[k], y = ys[k];
            if (!(cells.X.Holds(x) && cells.Y.Holds(y)))
            {
                zs[k] = outside.Estimate(x, y);
                continue;
            }

            int column = cells.X.Locate(x, out double t), row = cells.Y.Locate(y, out double s);
            zs[k] = TCell.One(ref Unsafe.Add(ref coefficients, (nint)((row * cells.X.Cells) + column) * cells.Terms), t, s);
        }
    }

    /// <summary>Rows become columns.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Transpose(ref Vector256<double> a, ref Vector256<double> b, ref Vector256<double> c, ref Vector256<double> d)
    {
        Vector256<double> ab0 = Avx.UnpackLow(a, b), ab1 = Avx.UnpackHigh(a, b), cd0 = Avx.UnpackLow(c, d), cd1 = Avx.UnpackHigh(c, d);
        a = Avx.Permute2x128(ab0, cd0, 0x20);
        b = Avx.Permute2x128(ab1, cd1, 0x20);
        c = Avx.Permute2x128(ab0, cd0, 0x31);
        d = Avx.Permute2x128(ab1, cd1, 0x31);
    }

    private readonly struct BilinearCell : ICell
    {
        public static double One(ref double c, double t, double s) =>
            c + (s * Unsafe.Add(ref c, 1)) + (t * (Unsafe.Add(ref c, 2) + (s * Unsafe.Add(ref c, 3))));

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static Vector256<double> Four(ref double c, Vector128<int> cell, Vector256<double> t, Vector256<double> s)
        {
            Vector256<double> c0 = Vector256.LoadUnsafe(ref c, (nuint)(4 * cell.GetElement(0)));
            Vector256<double> c1 = Vector256.LoadUnsafe(ref c, (nuint)(4 * cell.GetElement(1)));
            Vector256<double> c2 = Vector256.LoadUnsafe(ref c, (nuint)(4 * cell.GetElement(2)));
            Vector256<double> c3 = Vector256.LoadUnsafe(ref c, (nuint)(4 * cell.GetElement(3)));
            Transpose(ref c0, ref c1, ref c2, ref c3);
            return Fma.MultiplyAdd(t, Fma.MultiplyAdd(s, c3, c2), Fma.MultiplyAdd(s, c1, c0));
        }
    }

    private readonly struct BicubicCell : ICell
    {
        public static double One(ref double c, double t, double s)
        {
            Vector256<double> along = Vector256.LoadUnsafe(ref c, 12);
            along = (along * t) + Vector256.LoadUnsafe(ref c, 8);
            along = (along * t) + Vector256.LoadUnsafe(ref c, 4);
            along = (along * t) + Vector256.LoadUnsafe(ref c, 0);
            return along.GetElement(0) + (s * (along.GetElement(1) + (s * (along.GetElement(2) + (s * along.GetElement(3))))));
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static Vector256<double> Four(ref double c, Vector128<int> cell, Vector256<double> t, Vector256<double> s)
        {
            Vector256<double> c0 = AlongX(ref c, cell.GetElement(0), t.GetElement(0));
            Vector256<double> c1 = AlongX(ref c, cell.GetElement(1), t.GetElement(1));
            Vector256<double> c2 = AlongX(ref c, cell.GetElement(2), t.GetElement(2));
            Vector256<double> c3 = AlongX(ref c, cell.GetElement(3), t.GetElement(3));
            Transpose(ref c0, ref c1, ref c2, ref c3);
            return Fma.MultiplyAdd(Fma.MultiplyAdd(Fma.MultiplyAdd(c3, s, c2), s, c1), s, c0);
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private static Vector256<double> AlongX(ref double c, int cell, double t)
        {
            Vector256<double> at = Vector256.Create(t);
            nuint start = (nuint)(16 * cell);
            Vector256<double> along = Fma.MultiplyAdd(Vector256.LoadUnsafe(ref c, start + 12), at, Vector256.LoadUnsafe(ref c, start + 8));
            along = Fma.MultiplyAdd(along, at, Vector256.LoadUnsafe(ref c, start + 4));
            return Fma.MultiplyAdd(along, at, Vector256.LoadUnsafe(ref c, start));
        }
    }
}
