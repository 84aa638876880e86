using MathNet.Numerics.Integration;

namespace PrinterMath.Extrusion;

/// <summary>Pressure over a round channel from the stress at its wall, in SI: dp/dz = 2·τ_w/R.</summary>
/// <remarks>
/// A taper is a row of thin cylinders (slender channel), with w = ln R as variable: ∫ 2·τ_w dw/tan α, in which the integrand of a power law is a single exponential. 16 Gauss
/// points leave rounding only.
/// </remarks>
internal static class PassageModel
{
    private static readonly (double Place, double Weight)[] Nodes =
        [.. Enumerable.Range(0, 16).Select(i => (new GaussLegendreRule(0, 1, 16).GetAbscissa(i), new GaussLegendreRule(0, 1, 16).GetWeight(i)))];

    internal static double Pascals(MeltViscosity viscosity, double flow, double kelvins, double inlet, double outlet, double length)
    {
        double r1 = inlet / 2, r2 = outlet / 2;
        if (inlet == outlet)
        {
            return 2 * WallStress(viscosity, flow, kelvins, r1) * length / r1;
        }

        double span = Math.Log(r1 / r2), slope = (r1 - r2) / length, sum = 0;
        foreach ((double place, double weight) in Nodes)
        {
            sum += weight * WallStress(viscosity, flow, kelvins, r2 * Math.Exp(span * place));
        }

        return 2 * sum * span / slope;
    }

    internal static double WallRate(MeltViscosity viscosity, double flow, double kelvins, double radius) =>
        viscosity.WallRate(4 * flow / (Math.PI * radius * radius * radius), kelvins);

    private static double WallStress(MeltViscosity viscosity, double flow, double kelvins, double radius)
    {
        double rate = WallRate(viscosity, flow, kelvins, radius);
        return rate * viscosity.PascalSeconds(rate, kelvins);
    }
}
