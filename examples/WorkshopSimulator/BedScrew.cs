namespace WorkshopSimulator;

/// <summary>A row of screws.csv.</summary>
/// <param name="Name">Where it stands.</param>
/// <param name="X">x in mm.</param>
/// <param name="Y">y in mm.</param>
/// <param name="Thread">Metric coarse thread by name.</param>
/// <param name="Hand">Right or left.</param>
/// <param name="TurnedFrom">Above or below.</param>
public sealed record BedScrew(string Name, double X, double Y, string Thread, string Hand, string TurnedFrom);
