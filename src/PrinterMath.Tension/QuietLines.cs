namespace PrinterMath.Tension;

/// <summary>Lines heard while no pluck was ringing.</summary>
internal sealed record QuietLines(List<SpectralPeak> Peaks, double Resolution, double CountSquared)
{
    internal static QuietLines None { get; } = new([], 0, 1);
}
