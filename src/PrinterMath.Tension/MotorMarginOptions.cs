using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>How a motor's torque is set against what a move asks of it.</summary>
public sealed record MotorMarginOptions
{
    /// <summary>Share of the largest torque that may be used, a ratio; the rest covers resonances, detent, driver losses and a knock against the nozzle.</summary>
    /// <value>0.5 (common practice, no source). Greater than 0, at most 1.</value>
    public double UsableShare { get; init; } = 0.5;

    /// <summary>Tension of the belt at rest, for the friction that it causes.</summary>
    /// <value>Anywhere between 10 and 40 N, if null.</value>
    public Measured<Force>? Tension { get; init; }

    /// <summary>Direction of the move on a crossed drive, from +x towards +y. Not used on a single axis.</summary>
    /// <value>
    /// Null: any. Then the motor's speed is √2·v/r, that of a diagonal, together with the direction that asks for most torque: exact where both masses are equal, else on the
    /// safe side.
    /// </value>
    public Angle? Direction { get; init; }
}
