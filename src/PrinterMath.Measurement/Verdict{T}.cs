using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>What a measured value says about its limits: within, outside, or undecided with what limits it.</summary>
/// <typeparam name="T">The quantity.</typeparam>
/// <remarks>Made by <see cref="Tolerance{T}.Judge(Measured{T})"/>. Source: JCGM 106:2012, clause 8.</remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Verdict<T> : IVerdict
    where T : struct
{
    internal Verdict(
        Conclusion conclusion, double probabilityOfConformity, double specificRisk, double guardBand, Tolerance<T> tolerance, Measured<T> measured, Limitation? limitation)
    {
        Conclusion = conclusion;
        ProbabilityOfConformity = probabilityOfConformity;
        SpecificRisk = specificRisk;
        GuardBand = QuantityUnits<T>.Known.FromSi(guardBand);
        Tolerance = tolerance;
        Measured = measured;
        Limitation = limitation;
    }

    /// <inheritdoc/>
    public Conclusion Conclusion { get; }

    /// <inheritdoc/>
    public double ProbabilityOfConformity { get; }

    /// <inheritdoc/>
    public double SpecificRisk { get; }

    /// <inheritdoc/>
    public Limitation? Limitation { get; }

    /// <summary>Guard band g = t₁₋risk(ν)·u: a value must be this far inside one limit to be Within, this far outside to be Outside.</summary>
    public T GuardBand { get; }

    /// <summary>The limits.</summary>
    public Tolerance<T> Tolerance { get; }

    /// <summary>The judged value.</summary>
    public Measured<T> Measured { get; }

    /// <summary>Invariant text: conclusion, value, limits, probability and, when undecided, what limits it.</summary>
    /// <returns>The text.</returns>
    public override string ToString()
    {
        string what = Conclusion switch
        {
            Conclusion.Within => "within",
            Conclusion.Outside => "outside",
            _ => "undecided",
        };
        string because = Limitation is null ? string.Empty : $"; {Limitation}";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{what}: {Measured} against {Tolerance}, probability of conformity {ProbabilityOfConformity:0.###}{because}");
    }
}
