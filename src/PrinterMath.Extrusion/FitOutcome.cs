namespace PrinterMath.Extrusion;

/// <summary>Answer of one trial of two mating pieces.</summary>
public enum FitOutcome
{
    /// <summary>The pieces do not go together by hand: too tight.</summary>
    DoesNotFit,

    /// <summary>The pieces go together by hand.</summary>
    Fits,
}
