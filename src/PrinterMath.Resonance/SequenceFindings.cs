namespace PrinterMath.Resonance;

/// <summary>Codes of the findings about the choice of a sequence.</summary>
public static class SequenceFindings
{
    /// <summary>Blocking: every sequence is longer than the limit.</summary>
    public const string AllTooLong = "sequence.all-too-long";

    /// <summary>Caution: no sequence within the limits leaves as little as was asked for; the best of them was taken.</summary>
    public const string ResidualNotMet = "sequence.residual-not-met";
}
