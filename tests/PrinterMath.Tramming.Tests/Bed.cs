using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming.Tests;

/// <summary>Short ways to write beds in millimetres.</summary>
internal static class Bed
{
    internal static Length Mm(double value) => Length.FromMillimeters(value);

    internal static ProbePoint Point(double x, double y, double z) => ProbePoint.At(Mm(x), Mm(y), Mm(z));

    internal static ProbePoint Point(double x, double y, double z, double u) => ProbePoint.At(Mm(x), Mm(y), Measured.Of(Mm(z), Mm(u)));

    internal static AdjustingScrew Screw(string name, double x, double y, string thread = "M3") =>
        AdjustingScrew.At(name, Mm(x), Mm(y), ScrewThread.IsoCoarse(thread), BedMotion.Lowers);

    internal static double Millimeters(this Measured<Length> measured) => measured.SiValue * 1e3;

    internal static double UncertaintyMillimeters(this Measured<Length> measured) => measured.SiStandardUncertainty * 1e3;

    internal static List<ProbePoint> Grid(double step, int countX, int countY, Func<double, double, double> z, double? u = null)
    {
        var points = new List<ProbePoint>();
        for (int j = 0; j < countY; j++)
        {
            for (int i = 0; i < countX; i++)
            {
                double x = i * step;
                double y = j * step;
                points.Add(u is double known ? Point(x, y, z(x, y), known) : Point(x, y, z(x, y)));
            }
        }

        return points;
    }
}
