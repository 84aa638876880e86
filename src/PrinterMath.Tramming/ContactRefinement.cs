namespace PrinterMath.Tramming;

/// <summary>How a contact search narrows its bracket once it has touched. Either way every height is approached from above, past the backlash.</summary>
public enum ContactRefinement
{
    /// <summary>Halves the bracket: the fewest trials.</summary>
    Bisect,

    /// <summary>Approaches again in steps a quarter as large: more trials, each pressing less, and the clear height is tried anew, which shows drift.</summary>
    FinerSteps,
}
