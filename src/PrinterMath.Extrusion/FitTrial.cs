using System.Globalization;

namespace PrinterMath.Extrusion;

/// <summary>One trial: the flow both pieces were printed at, a ratio, and whether they fitted. Equality by value.</summary>
/// <remarks>The default is a trial at flow zero that does not fit; a series never holds it.</remarks>
public readonly record struct FitTrial
{
    private FitTrial(double flow, FitOutcome outcome)
    {
        Flow = flow;
        Outcome = outcome;
    }

    /// <summary>A trial that was made.</summary>
    /// <param name="flow">Flow both pieces were printed at, a ratio greater than zero.</param>
    /// <param name="outcome">Whether they fitted.</param>
    /// <returns>The trial.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is not positive, or the answer is not one of those named.</exception>
    public static FitTrial At(double flow, FitOutcome outcome) => new(
        Guard.Positive(flow),
        Enum.IsDefined(outcome) ? outcome : throw Guard.Out(nameof(outcome), outcome, "Fits or DoesNotFit"));

    /// <summary>Flow, a ratio.</summary>
    public double Flow { get; }

    /// <summary>The answer.</summary>
    public FitOutcome Outcome { get; }

    /// <summary>Invariant text.</summary>
    /// <returns>Flow and answer.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Flow:G6}: {Outcome}");
}
