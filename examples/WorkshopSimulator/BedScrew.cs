namespace WorkshopSimulator;

/// <summary>A row of screws.csv.</summary>
/// <param name="Name">Where it stands.</param>
/// <param name="X">x in mm.</param>
/// <param name="Y">y in mm.</param>
/// <param name="Thread">Metric coarse thread by name.</param>
/// <param name="TurnedFrom">Where the hand is: above or below.</param>
/// <param name="Clockwise">What turning it clockwise, as seen from the hand, does to the bed there: raises or lowers.</param>
public sealed record BedScrew(string Name, double X, double Y, string Thread, string TurnedFrom, string Clockwise);
