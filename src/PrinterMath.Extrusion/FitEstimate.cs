using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.Extrusion;

/// <summary>The flow at which half of the trials would fit, with its interval, and how gradual the transition is.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FitEstimate
{
    internal FitEstimate(Measured<double> flow, double lower, double upper, Measured<double> transition)
    {
        Flow = flow;
        Lower = lower;
        Upper = upper;
        TransitionDeviation = transition;
    }

    /// <summary>The 50 % flow µ, a ratio: mean and standard deviation of what is known about it.</summary>
    public Measured<double> Flow { get; }

    /// <summary>Lower end of the interval that holds µ with a probability of 95 %; 2.5 % lie below.</summary>
    public double Lower { get; }

    /// <summary>Upper end of that interval; 2.5 % lie above.</summary>
    public double Upper { get; }

    /// <summary>Standard deviation σ of the transition, a ratio: how well printing and fitting repeat. A few trials tell little of it.</summary>
    public Measured<double> TransitionDeviation { get; }

    /// <summary>Invariant text.</summary>
    /// <returns>Flow and interval.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Flow} ({Lower:0.0000} to {Upper:0.0000})");
}
