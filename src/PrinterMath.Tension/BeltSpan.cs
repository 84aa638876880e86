using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>The free part of a belt between two places that hold it: length, linear density, rigidity, ends. Turns frequency into tension and back.</summary>
/// <remarks>
/// The frequency is that of <see cref="PinnedSpan"/>, of <see cref="ClampedSpan"/> or, by default, anywhere between: f = f_pinned + e·(f_clamped − f_pinned) with e
/// rectangular on 0 to 1. Uncertainties propagate to first order; the budget is part of each answer. Bending is Euler-Bernoulli's, so the span must be many
/// times longer than the belt is high.
/// Source: the two formulas as cited there; propagation JCGM 100:2008, 5.1.2.
/// </remarks>
/// <example><code>
/// var span = new BeltSpan(length, density);
/// UncertaintyBudget&lt;Force&gt; tension = span.TensionFor(heard).Budget;
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class BeltSpan
{
    private static readonly Measured<FlexuralRigidity> UnknownRigidity = Measured.FromRange(
        FlexuralRigidity.FromNewtonSquareMeters(0.5e-5), FlexuralRigidity.FromNewtonSquareMeters(4e-5));

    private static readonly Measured<double> UnknownFixity = Measured.FromRange(0.0, 1.0);

    /// <summary>A span with rigidity and ends not known.</summary>
    /// <param name="length">Free length L between the places that hold it, greater than zero.</param>
    /// <param name="density">Linear density µ, greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">Length or density is not positive.</exception>
    /// <exception cref="InvalidOperationException">Length or density was never measured.</exception>
    public BeltSpan(Measured<Length> length, Measured<LinearDensity> density)
        : this(length, density, new BeltSpanOptions())
    {
    }

    /// <summary>A span with what is known of its rigidity and ends.</summary>
    /// <param name="length">Free length L between the places that hold it, greater than zero.</param>
    /// <param name="density">Linear density µ, greater than zero.</param>
    /// <param name="options">Rigidity and ends.</param>
    /// <exception cref="ArgumentOutOfRangeException">Length or density is not positive, or the ends are not one of those named.</exception>
    /// <exception cref="InvalidOperationException">Length or density was never measured.</exception>
    public BeltSpan(Measured<Length> length, Measured<LinearDensity> density, BeltSpanOptions options)
    {
        Guard.Positive(length.SiValue, nameof(length));
        Guard.Positive(density.SiValue, nameof(density));
        Length = length;
        Density = density;
        Rigidity = Guard.NotNull(options).Rigidity ?? UnknownRigidity;
        Ends = Enum.IsDefined(options.Ends) ? options.Ends : throw Guard.Out(nameof(options), options.Ends, "one of the named ends");
        Fixity = Ends switch
        {
            SpanEnds.Pinned => Measured.Exact(0.0),
            SpanEnds.Clamped => Measured.Exact(1.0),
            _ => UnknownFixity,
        };
    }

    /// <summary>Free length L.</summary>
    public Measured<Length> Length { get; }

    /// <summary>Linear density µ.</summary>
    public Measured<LinearDensity> Density { get; }

    /// <summary>Flexural rigidity EI, as stated or the default range.</summary>
    public Measured<FlexuralRigidity> Rigidity { get; }

    /// <summary>How the ends are held.</summary>
    public SpanEnds Ends { get; }

    /// <summary>How far the ends are from pinned (0) towards clamped (1), a ratio.</summary>
    internal Measured<double> Fixity { get; }

    /// <summary>Tension of the span when it sounds at a frequency.</summary>
    /// <param name="frequency">Measured frequency of a partial, greater than zero.</param>
    /// <param name="harmonic">Number of that partial, 1 or more.</param>
    /// <returns>The tension with its budget, or a finding when the span is too stiff to sound that low.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or the harmonic is out of range.</exception>
    /// <exception cref="InvalidOperationException">The frequency was never measured.</exception>
    public SpanTension TensionFor(Measured<Frequency> frequency, int harmonic = 1)
    {
        Guard.Positive(frequency.SiValue, nameof(frequency));
        Guard.AtLeast(harmonic, 1);
        BudgetInput[] inputs = [.. Inputs(), BudgetInput.Of(SpanInputs.Frequency, frequency)];
        return SpanTension.From(
            Propagation.FirstOrder<Force>(x => SpanModel.Newtons(x[4], x[0], x[1], x[2], x[3], harmonic), inputs),
            IdealString.Newtons(frequency.SiValue, Length.SiValue, Density.SiValue, harmonic));
    }

    /// <summary>Frequency of a partial of the span at a tension.</summary>
    /// <param name="tension">The tension, greater than zero.</param>
    /// <param name="harmonic">Number of the partial, 1 or more.</param>
    /// <returns>The frequency with its budget.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The tension or the harmonic is out of range.</exception>
    /// <exception cref="InvalidOperationException">The tension was never measured.</exception>
    public UncertaintyBudget<Frequency> FrequencyAt(Measured<Force> tension, int harmonic = 1)
    {
        Guard.Positive(tension.SiValue, nameof(tension));
        Guard.AtLeast(harmonic, 1);
        BudgetInput[] inputs = [.. Inputs(), BudgetInput.Of(SpanInputs.Tension, tension)];
        return Propagation.FirstOrder<Frequency>(x => SpanModel.Hertz(x[4], x[0], x[1], x[2], x[3], harmonic), inputs);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Length, density and ends.</returns>
    public override string ToString() => $"span of {Length}, {Density}, ends {Ends}";

    private IEnumerable<BudgetInput> Inputs() =>
    [
        BudgetInput.Of(SpanInputs.Length, Length),
        BudgetInput.Of(SpanInputs.Density, Density),
        BudgetInput.Of(SpanInputs.Rigidity, Rigidity),
        BudgetInput.Of(SpanInputs.Ends, Fixity),
    ];
}
