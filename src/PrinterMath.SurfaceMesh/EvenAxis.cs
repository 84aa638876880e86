using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace PrinterMath.SurfaceMesh;

/// <summary>The cells of four coordinates at a time on an axis of even spacing.</summary>
internal readonly struct EvenAxis(double first, double last, double inverseStep, int cells)
{
    private readonly Vector256<double> _first = Vector256.Create(first);
    private readonly Vector256<double> _last = Vector256.Create(last);
    private readonly Vector256<double> _inverseStep = Vector256.Create(inverseStep);
    private readonly Vector128<int> _lastCell = Vector128.Create(cells - 1);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal bool Hold(Vector256<double> values) =>
        Vector256.EqualsAll(
            (Vector256.GreaterThanOrEqual(values, _first) & Vector256.LessThanOrEqual(values, _last)).AsInt64(), Vector256<long>.AllBitsSet);

    /// <summary>The axis holds the values. At its end t is 1, else less.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Vector128<int> Locate(Vector256<double> values, out Vector256<double> within)
    {
        Vector256<double> place = (values - _first) * _inverseStep;
        Vector128<int> cell = Vector128.Min(Avx.ConvertToVector128Int32WithTruncation(place), _lastCell);
        within = place - Avx.ConvertToVector256Double(cell);
        return cell;
    }
}
