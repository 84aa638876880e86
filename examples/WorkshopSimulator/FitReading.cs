namespace WorkshopSimulator;

/// <summary>A row of fit.csv.</summary>
/// <param name="Flow">Flow both pieces were printed at.</param>
/// <param name="Fits">Whether they went together.</param>
public sealed record FitReading(double Flow, bool Fits);
