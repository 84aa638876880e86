using System.Globalization;

namespace PrinterMath.Extrusion;

/// <summary>Cross model with the temperature law of Williams, Landel and Ferry: η = η₀/[1 + (η₀·γ̇/τ*)¹⁻ⁿ], η₀ = D₁·exp[−A₁·(T − T*)/(A₂ + T − T*)].</summary>
internal sealed class CrossWlfShear(double exponent, double stress, double prefactor, double reference, double a1, double a2) : ShearLaw
{
    internal override double Exponent => exponent;

    internal override string Rule => string.Create(CultureInfo.InvariantCulture, $"at least the reference temperature, {reference - 273.15:G6} °C");

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"Cross-WLF, n = {exponent:G4}, τ* = {stress:G4} Pa, T* = {reference - 273.15:G4} °C");

    internal override double PascalSeconds(double rate, double kelvins)
    {
        double plateau = ZeroShear(kelvins);
        return plateau / (1 + Math.Pow(plateau * rate / stress, 1 - exponent));
    }

    internal override double WallRate(double apparent, double kelvins)
    {
        double scale = ZeroShear(kelvins) / stress;
        return CrossChannel.WallRate(apparent * scale, exponent) / scale;
    }

    internal override double? Plateau(double kelvins) => ZeroShear(kelvins);

    internal override bool IsDefined(double kelvins) => kelvins >= reference;

    private double ZeroShear(double kelvins) => prefactor * Math.Exp(-a1 * (kelvins - reference) / (a2 + kelvins - reference));
}
