using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>Limits for a quantity: one or two, each included. Made by <see cref="Tolerance"/>.</summary>
/// <typeparam name="T">The quantity.</typeparam>
/// <remarks>Equality by value in SI. Source: JCGM 106:2012, 3.3.4 to 3.3.6 and clause 7.</remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Tolerance<T> : IEquatable<Tolerance<T>>, IFormattable
    where T : struct
{
    /// <summary>The specific risk when the caller states none.</summary>
    private const double UsualRisk = 0.05;

    internal Tolerance(double lower, double upper)
    {
        LowerSi = lower;
        UpperSi = upper;
    }

    /// <summary>Lower limit; null when there is none.</summary>
    public T? Lower => double.IsFinite(LowerSi) ? QuantityUnits<T>.Known.FromSi(LowerSi) : null;

    /// <summary>Upper limit; null when there is none.</summary>
    public T? Upper => double.IsFinite(UpperSi) ? QuantityUnits<T>.Known.FromSi(UpperSi) : null;

    internal double LowerSi { get; }

    internal double UpperSi { get; }

    /// <summary>Judges a measured value at a specific risk of 5 %.</summary>
    /// <param name="measured">The value with its uncertainty.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="InvalidOperationException">Nothing was measured.</exception>
    public Verdict<T> Judge(Measured<T> measured) => Judge(measured, UsualRisk);

    /// <summary>Judges a measured value at a stated specific risk.</summary>
    /// <param name="measured">The value with its uncertainty.</param>
    /// <param name="specificRisk">Largest accepted probability that Within or Outside is wrong; greater than 0 and less than 0.5.</param>
    /// <returns>The verdict.</returns>
    /// <remarks>
    /// Within when the probability of conformity is at least 1 − risk; outside when one of the limits is passed with a probability of at least
    /// 1 − risk. For one limit this is guarded acceptance and guarded rejection with a guard band t₁₋risk(ν)·u. The probability uses the normal distribution, or for finite ν the scaled
    /// and shifted t distribution. Source: JCGM 106:2012, 7.3 equations (7) and (9), 7.4 (11), 8.3.2, 8.3.3; JCGM 101:2008, 6.4.9.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The risk is out of range.</exception>
    /// <exception cref="InvalidOperationException">Nothing was measured.</exception>
    public Verdict<T> Judge(Measured<T> measured, double specificRisk) =>
        VerdictRule.Decide(this, measured, null, Guard.StrictlyBetween(specificRisk, 0, 0.5));

    /// <summary>Judges a result with its budget at a specific risk of 5 %; an undecided verdict then names the input that limits it.</summary>
    /// <param name="budget">The result and its budget.</param>
    /// <returns>The verdict.</returns>
    public Verdict<T> Judge(UncertaintyBudget<T> budget) => Judge(budget, UsualRisk);

    /// <summary>Judges a result with its budget at a stated specific risk; an undecided verdict then names the input that limits it.</summary>
    /// <param name="budget">The result and its budget.</param>
    /// <param name="specificRisk">Largest accepted probability that Within or Outside is wrong; greater than 0 and less than 0.5.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The risk is out of range.</exception>
    public Verdict<T> Judge(UncertaintyBudget<T> budget, double specificRisk) =>
        VerdictRule.Decide(this, Guard.NotNull(budget).Result, budget.Lines, Guard.StrictlyBetween(specificRisk, 0, 0.5));

    /// <inheritdoc/>
    public bool Equals(Tolerance<T>? other) => other is not null && LowerSi.Equals(other.LowerSi) && UpperSi.Equals(other.UpperSi);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Tolerance<T>);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(LowerSi, UpperSi);

    /// <summary>Invariant text: <c>20 to 30 N</c>, <c>at most 0.1 mm</c>.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => ToString(null, CultureInfo.InvariantCulture);

    /// <summary>Text in a chosen unit.</summary>
    /// <param name="format">A unit of the quantity; null for its usual unit.</param>
    /// <param name="formatProvider">Where the decimal separator comes from; null for invariant.</param>
    /// <returns>The text.</returns>
    /// <exception cref="FormatException">The unit is not known.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null)
    {
        DisplayUnit[] units = QuantityUnits<T>.Known.Display;
        DisplayUnit unit = format is null ? units[0] : DisplayUnit.Find(units, format);
        IFormatProvider provider = formatProvider ?? CultureInfo.InvariantCulture;
        string lower = (LowerSi * unit.PerSi).ToString("G6", provider);
        string upper = (UpperSi * unit.PerSi).ToString("G6", provider);
        string text = (double.IsFinite(LowerSi), double.IsFinite(UpperSi)) switch
        {
            (true, true) => $"{lower} to {upper}",
            (true, false) => $"at least {lower}",
            _ => $"at most {upper}",
        };
        return unit.Symbol.Length == 0 ? text : $"{text} {unit.Symbol}";
    }
}
