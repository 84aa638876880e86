using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

internal static class UnitsInWords
{
    internal static double CubicMillimetersPerSecond(this VolumeFlow flow) => flow.CubicMetersPerSecond * 1e9;
}
