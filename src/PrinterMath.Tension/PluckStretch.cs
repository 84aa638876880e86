namespace PrinterMath.Tension;

/// <summary>A stretch of a recording in samples; <paramref name="Room"/> is how many there are until the next pluck or the longest window.</summary>
internal readonly record struct PluckStretch(int Start, int Count, int Room, double Energy);
