using System.Globalization;

namespace PrinterMath.Extrusion;

/// <summary>Power law η = K·γ̇ⁿ⁻¹ with a consistency that falls with temperature, K(T) = K₀·exp[(E/R)·(1/T − 1/T₀)].</summary>
internal sealed class PowerLawShear(double exponent, double consistency, double reference, double activation) : ShearLaw
{
    /// <summary>Molar gas constant in J/(mol·K), exact since 2019: SI brochure, 9th ed.</summary>
    private const double GasConstant = 8.31446261815324;

    internal override double Exponent => exponent;

    internal override string Rule => "above 0 K";

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"power law, n = {exponent:G4}, K = {consistency:G4} Pa·sⁿ at {reference - 273.15:G4} °C");

    internal override double PascalSeconds(double rate, double kelvins) => Consistency(kelvins) * Math.Exp((exponent - 1) * Math.Log(rate));

    internal override double WallRate(double apparent, double kelvins) => apparent * ((3 * exponent) + 1) / (4 * exponent);

    internal override double? Plateau(double kelvins) => exponent == 1 ? Consistency(kelvins) : null;

    internal override bool IsDefined(double kelvins) => kelvins > 0;

    private double Consistency(double kelvins) => consistency * Math.Exp(activation / GasConstant * ((1 / kelvins) - (1 / reference)));
}
