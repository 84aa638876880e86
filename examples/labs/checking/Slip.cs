namespace LabChecking;

/// <summary>A wrong way that many go, the number it gives, and what to think about.</summary>
public sealed record Slip(string Name, double Value, string Hint);
