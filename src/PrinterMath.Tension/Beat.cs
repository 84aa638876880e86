namespace PrinterMath.Tension;

/// <summary>A second string of nearly equal pitch that rings with the first.</summary>
/// <param name="RelativeDifference">|f₂ − f₁|/f₁, the same for every partial.</param>
/// <param name="Level">Amplitude of the second string over that of the first at the onset, a ratio; root mean square over the partials.</param>
/// <param name="Odds">Twice the log likelihood ratio of two strings against one.</param>
internal sealed record Beat(double RelativeDifference, double Level, double Odds);
