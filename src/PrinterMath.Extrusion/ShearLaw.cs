namespace PrinterMath.Extrusion;

/// <summary>A law of shear viscosity in SI: constants and formulas without the range they were measured in.</summary>
internal abstract class ShearLaw
{
    /// <summary>Exponent n at high rates.</summary>
    internal abstract double Exponent { get; }

    internal abstract double PascalSeconds(double rate, double kelvins);

    /// <summary>True rate at the wall of a round channel from the apparent one.</summary>
    internal abstract double WallRate(double apparent, double kelvins);

    /// <summary>Viscosity at low rate; null when there is no plateau.</summary>
    internal abstract double? Plateau(double kelvins);

    internal abstract bool IsDefined(double kelvins);

    /// <summary>What a temperature must be, for a sentence.</summary>
    internal abstract string Rule { get; }
}
