using System.Numerics;
using System.Runtime.CompilerServices;

namespace PrinterMath.SurfaceMesh;

/// <summary>a·b + c, rounded once where the runtime offers it.</summary>
internal static class Fused
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector<double> Add(Vector<double> a, Vector<double> b, Vector<double> c) =>
#if NET9_0_OR_GREATER
        Vector.MultiplyAddEstimate(a, b, c);
#else
        (a * b) + c;
#endif
}
