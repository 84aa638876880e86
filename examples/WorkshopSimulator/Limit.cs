namespace WorkshopSimulator;

/// <summary>A row of limits.csv.</summary>
/// <param name="Quantity">What is limited.</param>
/// <param name="Lower">Lower limit, if any.</param>
/// <param name="Upper">Upper limit, if any.</param>
/// <param name="Unit">UCUM unit.</param>
public sealed record Limit(string Quantity, double? Lower, double? Upper, string Unit);
