namespace WorkshopSimulator;

/// <summary>A row of drive.csv.</summary>
/// <param name="Quantity">Its name.</param>
/// <param name="Value">What was read, drawn or chosen.</param>
/// <param name="Unit">UCUM unit.</param>
/// <param name="StandardUncertainty">Standard uncertainty; null for what is taken as it stands.</param>
public sealed record DriveReading(string Quantity, double Value, string Unit, double? StandardUncertainty = null);
