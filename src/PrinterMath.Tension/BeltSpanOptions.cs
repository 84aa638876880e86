using PrinterMath.Measurement;

namespace PrinterMath.Tension;

/// <summary>What is known of a span besides its length and density.</summary>
public sealed record BeltSpanOptions
{
    /// <summary>Flexural rigidity EI of the belt; null when not known.</summary>
    /// <value>
    /// Null: anywhere between 0.5e-5 and 4e-5 N·m², for belts 6 mm wide with 2 mm pitch (common practice, no source). State it for wider belts, see <see cref="FlexuralRigidityOf"/>: it grows with
    /// the width.
    /// </value>
    public Measured<FlexuralRigidity>? Rigidity { get; init; }

    /// <summary>How the ends are held.</summary>
    /// <value><see cref="SpanEnds.Between"/>.</value>
    public SpanEnds Ends { get; init; } = SpanEnds.Between;
}
