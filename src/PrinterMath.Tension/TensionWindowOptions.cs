using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>What a belt's tension must serve.</summary>
public sealed record TensionWindowOptions
{
    /// <summary>Largest acceleration of the head, in any direction.</summary>
    /// <value>Required, zero or more.</value>
    public required Acceleration Acceleration { get; init; }

    /// <summary>What is left on the slack side at least, as a ratio of the force that the belt transmits: the margin against teeth that jump.</summary>
    /// <value>
    /// Anywhere between 0.1 and 0.3, if null ("about 10 to 30 % of the effective tension": Tension in timing-belt drives, Machine Design, 7 June 2001). Zero asks for no more
    /// than a slack side that is just taut.
    /// </value>
    public Measured<double>? SlackSideShare { get; init; }
}
