using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>Why a verdict is undecided, and what would decide it if the value stays where it is.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Limitation
{
    internal Limitation(LimitationKind kind, double requiredSiStandardUncertainty, string ucumUnit, string? inputName = null, int? observations = null)
    {
        Kind = kind;
        UcumUnit = ucumUnit;
        RequiredSiStandardUncertainty = requiredSiStandardUncertainty;
        InputName = inputName;
        Observations = observations;
    }

    /// <summary>What stands in the way.</summary>
    public LimitationKind Kind { get; }

    /// <summary>
    /// Standard uncertainty at which the same value would be decided, in <see cref="UcumUnit"/>: of the judged quantity or, for
    /// <see cref="LimitationKind.ImproveInput"/>, of the input; zero at <see cref="LimitationKind.ValueAtLimit"/>.
    /// </summary>
    public double RequiredSiStandardUncertainty { get; }

    /// <summary>The coherent SI unit of <see cref="RequiredSiStandardUncertainty"/> in the Unified Code for Units of Measure.</summary>
    public string UcumUnit { get; }

    /// <summary>The input to improve or to repeat; null when no budget names one.</summary>
    public string? InputName { get; }

    /// <summary>How many observations that input needs in all; null unless the kind is <see cref="LimitationKind.Repeat"/>.</summary>
    public int? Observations { get; }

    /// <summary>Invariant text: one clause that says what to do.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => Kind switch
    {
        LimitationKind.Repeat => string.Create(CultureInfo.InvariantCulture, $"repeat '{InputName}' until there are {Observations} observations"),
        LimitationKind.ImproveInput => $"know '{InputName}' to a standard uncertainty of {Required()}",
        LimitationKind.ValueAtLimit => "the value sits at the limit; change it rather than measure it better",
        _ => $"bring the standard uncertainty down to {Required()}",
    };

    private string Required()
    {
        DisplayUnit unit = QuantityTable.UsualUnit(UcumUnit);
        return string.Create(CultureInfo.InvariantCulture, $"{RequiredSiStandardUncertainty * unit.PerSi:G2} {unit.Symbol}").TrimEnd();
    }
}
