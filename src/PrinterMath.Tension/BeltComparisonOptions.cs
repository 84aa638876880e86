using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>How two belts that share a load are compared.</summary>
public sealed record BeltComparisonOptions
{
    /// <summary>Largest difference of tension that counts as equal, as a ratio of their mean.</summary>
    /// <value>Null: no limit, so no verdict. Greater than 0 and less than 1 otherwise.</value>
    public double? LargestRelativeDifference { get; init; }

    /// <summary>Tension that both belts should end at.</summary>
    /// <value>Null: the slacker belt is brought up to the tighter one.</value>
    public Force? Target { get; init; }

    /// <summary>Correlation of the two length readings: 1 when one ruler's error is all there is, 0 when reading errors dominate.</summary>
    /// <value>0.</value>
    public double LengthCorrelation { get; init; }

    /// <summary>Whether both belts are of one kind, so that density and rigidity are one unknown for both.</summary>
    /// <value>True when both spans hold the same density, else false, if null.</value>
    public bool? SameBelt { get; init; }

    /// <summary>Whether the ends of both spans are alike in make, so that the end condition is one unknown for both.</summary>
    /// <value>False: the ends are unknown each for itself, the safer choice.</value>
    public bool SameEnds { get; init; }

    internal Tolerance<double>? EqualityLimit =>
        LargestRelativeDifference is { } limit ? Tolerance.Around(0.0, Guard.StrictlyBetween(limit, 0, 1, nameof(LargestRelativeDifference))) : null;
}
