using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>How far a contact search may press, how fine it ends, and the play of the axis. The defaults are common practice, no source.</summary>
/// <example><code>var options = new ContactSearchOptions { AllowedOvershoot = Length.FromMillimeters(0.02), FinestStep = Length.FromMillimeters(0.005) };</code></example>
public sealed record ContactSearchOptions
{
    /// <summary>How far below first contact the nozzle may ever be driven: what springs, gauge and surface take without harm.</summary>
    /// <value>From 1 µm to 1 mm; 0.05 mm by default.</value>
    public Length AllowedOvershoot { get; init; } = Length.FromMillimeters(0.05);

    /// <summary>Width of the bracket to end with; all heights are whole multiples of it below the start.</summary>
    /// <value>From 0.1 µm to <see cref="AllowedOvershoot"/> less <see cref="LargestReadingError"/>; 0.01 mm by default.</value>
    public Length FinestStep { get; init; } = Length.FromMillimeters(0.01);

    /// <summary>Largest play of the axis between moving up and moving down.</summary>
    /// <value>From zero to 5 mm; 0.1 mm by default.</value>
    public Length Backlash { get; init; } = Length.FromMillimeters(0.1);

    /// <summary>Largest error of one reading, as a height to either side: contact felt too early or too late by no more than this.</summary>
    /// <value>Zero or more and less than <see cref="AllowedOvershoot"/>; zero by default. For errors without a bound repeat the readings, see <see cref="ContactTransition"/>.</value>
    public Length LargestReadingError { get; init; } = Length.Zero;

    /// <summary>How the bracket is narrowed after the first contact.</summary>
    /// <value><see cref="ContactRefinement.Bisect"/> by default.</value>
    public ContactRefinement Refinement { get; init; } = ContactRefinement.Bisect;
}
