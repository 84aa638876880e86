namespace PrinterMath.Tension;

/// <summary>A stretch of a recording in samples.</summary>
internal readonly record struct PluckStretch(int Start, int Count, double Energy);
