using System.Globalization;

namespace PrinterMath.Extrusion;

/// <summary>One trial: the flow both pieces were printed at, a ratio, and whether they fitted. Equality by value.</summary>
/// <remarks>The default is a trial at flow zero that does not fit; a series never holds it.</remarks>
public readonly record struct FitTrial
{
    internal FitTrial(double flow, FitOutcome outcome)
    {
        Flow = flow;
        Outcome = outcome;
    }

    /// <summary>Flow, a ratio.</summary>
    public double Flow { get; }

    /// <summary>The answer.</summary>
    public FitOutcome Outcome { get; }

    /// <summary>Invariant text.</summary>
    /// <returns>Flow and answer.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Flow:G6}: {Outcome}");
}
