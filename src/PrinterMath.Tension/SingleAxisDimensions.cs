using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>The few dimensions of an axis with one motor at x = 0 and one idler at the far end, the carriage on the upper strand.</summary>
public sealed record SingleAxisDimensions
{
    /// <summary>Distance from motor shaft to idler.</summary>
    /// <value>Required, greater than zero.</value>
    public required Length CentreDistance { get; init; }

    /// <summary>Distance between the two places of the carriage that hold the belt's ends.</summary>
    /// <value>Required, greater than zero.</value>
    public required Length CarriageLength { get; init; }

    /// <summary>Pitch radius of the motor pulley, see <see cref="BeltPulley.PitchRadius"/>.</summary>
    /// <value>Required, greater than zero.</value>
    public required Length PulleyRadius { get; init; }

    /// <summary>Pitch radius of the idler.</summary>
    /// <value>That of the motor pulley, if null.</value>
    public Length? IdlerRadius { get; init; }

    /// <summary>Where the carriage's middle goes, x from the motor shaft, at y = 0; see <see cref="HeadTravel.Along"/>.</summary>
    /// <value>Required.</value>
    public required HeadTravel Travel { get; init; }
}
