namespace PrinterMath.Tension;

/// <summary>How many samples of a stretch stand at the recorder's limit, and until when.</summary>
/// <param name="Samples">Samples in runs of three or more at either extreme of the recording.</param>
/// <param name="Last">Place of the last of them, counted from the start of the stretch; −1 when there is none.</param>
internal readonly record struct ClippedStretch(int Samples, int Last);
