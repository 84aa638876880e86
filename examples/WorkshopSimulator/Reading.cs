namespace WorkshopSimulator;

/// <summary>A row of readings.csv.</summary>
/// <param name="Quantity">Its name.</param>
/// <param name="Value">What was read.</param>
/// <param name="Unit">UCUM unit.</param>
/// <param name="StandardUncertainty">Standard uncertainty apart from the resolution.</param>
/// <param name="Resolution">Smallest step of the scale.</param>
public sealed record Reading(string Quantity, double Value, string Unit, double StandardUncertainty, double Resolution);
