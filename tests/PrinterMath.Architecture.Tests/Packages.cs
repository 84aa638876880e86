using System.Reflection;
using System.Runtime.CompilerServices;
using PrinterMath.Extrusion;
using PrinterMath.Measurement;
using PrinterMath.Resonance;
using PrinterMath.SurfaceMesh;
using PrinterMath.Tension;
using PrinterMath.Tramming;

namespace PrinterMath.Architecture.Tests;

/// <summary>The packages under test and their public types.</summary>
internal static class Packages
{
    internal static readonly Assembly Kernel = typeof(Measured).Assembly;

    internal static readonly Assembly[] All =
    [
        Kernel,
        typeof(BeltSpan).Assembly,
        typeof(PlaneFit).Assembly,
        typeof(BilinearModel).Assembly,
        typeof(ImpulseSequence).Assembly,
        typeof(Bead).Assembly,
    ];

    internal static IEnumerable<Type> PublicTypes => All.SelectMany(assembly => assembly.GetExportedTypes());

    internal static IEnumerable<Type> AllTypes =>
        All.SelectMany(assembly => assembly.GetTypes()).Where(type => type.GetCustomAttribute<CompilerGeneratedAttribute>() is null);
}
