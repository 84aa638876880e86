using System.Globalization;
using MathNet.Numerics.RootFinding;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>The temperature of the melt at which a flow takes a given pressure.</summary>
internal static class TemperatureSearch
{
    /// <summary>How far beyond the measured temperatures is searched, in kelvin: what comes out there is flagged.</summary>
    private const double Beyond = 50;

    internal static TemperatureNeed Find(MeltPath path, Measured<VolumeFlow> flow, Measured<Pressure> pressure, MeltViscosity viscosity)
    {
        double low = viscosity.LowestTemperature.Kelvins - Beyond, high = viscosity.HighestTemperature.Kelvins + Beyond;
        while (!viscosity.IsDefined(low))
        {
            low += 1;
        }

        BudgetInput[] inputs =
        [
            BudgetInput.Of("flow", flow),
            BudgetInput.Of("pressure", pressure),
            BudgetInput.Of("viscosity", Measured<double>.FromSi(1, viscosity.RelativeStandardUncertainty)),
            .. path.GeometryInputs(),
        ];
        double[] estimates = [.. inputs.Select(input => input.SiValue)];
        double coldest = Excess(low, estimates), hottest = Excess(high, estimates);
        if (coldest * hottest > 0)
        {
            bool always = hottest < 0;
            return new TemperatureNeed(null, [new Finding(
                always ? MeltFindings.PressureNeverReached : MeltFindings.PressureTooLow,
                FindingSeverity.Blocking,
                string.Create(CultureInfo.InvariantCulture, $"From {low - 273.15:0} to {high - 273.15:0} °C the flow takes {(always ? "less" : "more")} than {pressure.SiValue / 1e6:G3} MPa."),
                new FindingNumber("lowest", low, "K"),
                new FindingNumber("highest", high, "K"),
                new FindingNumber("pressure", pressure.SiValue, "Pa"))]);
        }

        double kelvins = Brent.FindRoot(at => Excess(at, estimates), low, high, 1e-10, 200);
        double slope = (Excess(kelvins + 0.01, estimates) - Excess(kelvins - 0.01, estimates)) / 0.02;

        // One Newton step: its first derivatives are those of the solution.
        Measured<double> result = Propagation.FirstOrder<double>(x => kelvins - (Excess(kelvins, x) / slope), inputs).Result;
        PressureDrop drop = path.DropAt(flow, MeasuredTemperature.FromKelvins(kelvins, 0), viscosity);
        return new TemperatureNeed(MeasuredTemperature.FromKelvins(kelvins, result.SiStandardUncertainty, result.DegreesOfFreedom), drop.Findings);

        double Excess(double at, ReadOnlySpan<double> x) => Math.Log(x[2] * path.Pascals(viscosity, x[0], at, x[3..]) / x[1]);
    }
}
