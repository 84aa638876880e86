namespace WorkshopSimulator;

/// <summary>A row of warming.csv: what the owner believes of a part that grows; every standard uncertainty is stated beside it.</summary>
/// <param name="Part">nozzle or bed.</param>
/// <param name="Length">Length along z, mm.</param>
/// <param name="LengthUncertainty">mm.</param>
/// <param name="Expansion">Coefficient of expansion, 10⁻⁶/K.</param>
/// <param name="ExpansionUncertainty">10⁻⁶/K.</param>
/// <param name="Measured">Temperature when contact was felt, °C.</param>
/// <param name="Printing">Temperature in printing, °C.</param>
/// <param name="TemperatureUncertainty">K.</param>
public sealed record WarmedPart(
    string Part, double Length, double LengthUncertainty, double Expansion, double ExpansionUncertainty, double Measured, double Printing, double TemperatureUncertainty);
