using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>The few dimensions of a crossed two-motor drive with both motors in front and the head between two idlers at each end of its beam.</summary>
public sealed record CrossedDimensions
{
    /// <summary>Distance along x between the centres of the idlers at the two ends of the beam.</summary>
    /// <value>Required, greater than zero.</value>
    public required Length BeamLength { get; init; }

    /// <summary>Distance along y from the motor shafts to the rear idlers.</summary>
    /// <value>Required, greater than zero.</value>
    public required Length Depth { get; init; }

    /// <summary>Distance along x between the two places of the head that hold a belt's ends.</summary>
    /// <value>Required, greater than zero.</value>
    public required Length CarriageLength { get; init; }

    /// <summary>Pitch radius of the motor pulleys, see <see cref="BeltPulley.PitchRadius"/>.</summary>
    /// <value>Required, greater than zero.</value>
    public required Length PulleyRadius { get; init; }

    /// <summary>Pitch radius of the idlers.</summary>
    /// <value>That of the motor pulleys, if null.</value>
    public Length? IdlerRadius { get; init; }

    /// <summary>Where the head's middle goes: x from the left beam idler, y from the motor shafts.</summary>
    /// <value>Required.</value>
    public required HeadTravel Travel { get; init; }
}
