namespace WorkshopSimulator;

/// <summary>A row of contact.csv.</summary>
/// <param name="HeightMillimetres">Height of the axis.</param>
/// <param name="Touches">Whether the gauge was held.</param>
public sealed record ContactTrial(double HeightMillimetres, bool Touches);
