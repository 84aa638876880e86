namespace WorkshopSimulator;

/// <summary>A row of turned.csv: what the owner believes to have turned.</summary>
/// <param name="BeforePass">Number of the pass that follows.</param>
/// <param name="Screw">Name of the screw.</param>
/// <param name="Sense">clockwise or counterclockwise, seen from the hand.</param>
/// <param name="Degrees">How far.</param>
public sealed record MadeTurn(int BeforePass, string Screw, string Sense, double Degrees);
