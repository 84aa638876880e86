using System.Diagnostics;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>The two belts of a crossed two-motor drive: motor A moves x + y of belt, motor B x − y.</summary>
/// <remarks>
/// Belt A runs from the head's left side over the left beam idler to motor A in front, back along the left side, across the rear, and over the right beam idler
/// to the head's right side; belt B is its mirror image. The belts lie at two heights, so they may cross in the plan.
/// Source: I. Sollmann, M. K. Jouaneh, D. Lavender 2010, IEEE/ASME Trans. Mechatronics 15(2), 280-290, for the kinematics.
/// </remarks>
/// <example><code>
/// CrossedLayout layout = CrossedLayout.From(dimensions);
/// Length free = layout.BeltA.SpanLength(CrossedLayout.BeamToMotorSpan, layout.Travel.Middle);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class CrossedLayout
{
    /// <summary>The span from the head to its beam idler: grows with x on belt A.</summary>
    public const int HeadToBeamSpan = 0;

    /// <summary>The span from the beam idler to the motor: grows with y on both belts.</summary>
    public const int BeamToMotorSpan = 1;

    /// <summary>Two belts of the caller's own drawing.</summary>
    /// <param name="beltA">The belt whose motor moves x + y.</param>
    /// <param name="beltB">The belt whose motor moves x − y.</param>
    /// <param name="travel">Where the head goes.</param>
    /// <exception cref="ArgumentException">Both belts have one name, or a belt's strands do not follow x ± y over the travel, within 1 %.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Somewhere in the travel pulleys overlap or lose the belt.</exception>
    public CrossedLayout(BeltPath beltA, BeltPath beltB, HeadTravel travel)
    {
        BeltA = Guard.NotNull(beltA);
        BeltB = Guard.NotNull(beltB);
        Travel = Guard.NotNull(travel);
        if (beltA.Name == beltB.Name)
        {
            throw Guard.Refused(nameof(beltB), $"Both belts are called '{beltA.Name}'.");
        }

        CheckFollows(beltA, 1, nameof(beltA));
        CheckFollows(beltB, -1, nameof(beltB));
    }

    /// <summary>The belt whose motor moves x + y.</summary>
    public BeltPath BeltA { get; }

    /// <summary>The belt whose motor moves x − y.</summary>
    public BeltPath BeltB { get; }

    /// <summary>Where the head goes.</summary>
    public HeadTravel Travel { get; }

    /// <summary>Both belts from a few dimensions.</summary>
    /// <param name="dimensions">The dimensions.</param>
    /// <returns>The layout.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is not positive, or the travel drives the head into a pulley or out of the frame.</exception>
    public static CrossedLayout From(CrossedDimensions dimensions)
    {
        Guard.NotNull(dimensions);
        double length = Guard.Positive(dimensions.BeamLength.Meters, nameof(dimensions));
        double depth = Guard.Positive(dimensions.Depth.Meters, nameof(dimensions));
        double half = Guard.Positive(dimensions.CarriageLength.Meters, nameof(dimensions)) / 2;
        double pulley = Guard.Positive(dimensions.PulleyRadius.Meters, nameof(dimensions));
        double idler = Guard.Positive((dimensions.IdlerRadius ?? dimensions.PulleyRadius).Meters, nameof(dimensions));
        HeadTravel travel = Guard.NotNull(dimensions.Travel, nameof(dimensions));
        CheckInside(travel, half + idler, length - half - idler, pulley + idler, depth - (2 * idler));

        var radius = Length.FromMeters(idler);
        BeltPulley Idler(string name, double x, double y, WrapSide side, RidesOn ridesOn) => new(name, PulleyKind.BearingIdler, new(x, y), radius, side, ridesOn);
        var a = new BeltPath(
            "A",
            new BeltEnd("head left", new(-half, idler)),
            [
                Idler("beam left", 0, 0, WrapSide.Left, RidesOn.Beam),
                new BeltPulley("motor left", PulleyKind.Motor, new(-idler - pulley, 0), dimensions.PulleyRadius, WrapSide.Right),
                Idler("rear left", -(2 * pulley), depth, WrapSide.Right, RidesOn.Frame),
                Idler("rear right", length, depth, WrapSide.Right, RidesOn.Frame),
                Idler("beam right", length, 0, WrapSide.Right, RidesOn.Beam),
            ],
            new BeltEnd("head right", new(half, -idler)));
        return new CrossedLayout(a, a.Mirrored(length / 2, "B", ExchangeSides), travel);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Both belts and the travel.</returns>
    public override string ToString() => $"crossed drive, {BeltA}; {BeltB}; travel {Travel}";

    private static string ExchangeSides(string name) =>
        name.Contains("left", StringComparison.Ordinal) ? name.Replace("left", "right", StringComparison.Ordinal) : name.Replace("right", "left", StringComparison.Ordinal);

    private static void CheckInside(HeadTravel travel, double left, double right, double front, double rear)
    {
        if (travel.Lowest.MetersX <= left || travel.Highest.MetersX >= right || travel.Lowest.MetersY <= front || travel.Highest.MetersY >= rear)
        {
            throw Guard.Out(nameof(CrossedDimensions.Travel), travel, $"inside the frame, within {new HeadPosition(left, front)} to {new HeadPosition(right, rear)}");
        }
    }

    /// <summary>The difference of the strands must change by ±2(x ± y), whichever end the belt is followed from.</summary>
    private void CheckFollows(BeltPath belt, int sign, string name)
    {
        HeadPosition origin = Travel.Lowest;
        foreach (HeadPosition head in Travel.Grid())
        {
            double moved = Math.Abs(StrandDifference(belt, head) - StrandDifference(belt, origin)) / 2;
            double dx = head.MetersX - origin.MetersX;
            double dy = head.MetersY - origin.MetersY;
            if (Math.Abs(moved - Math.Abs(dx + (sign * dy))) > 0.01 * (dx + dy))
            {
                throw Guard.Refused(name, FormattableString.Invariant(
                    $"Between {origin} and {head} belt {belt.Name} moves by {moved * 1000:0.##} mm; the belt of x {(sign > 0 ? '+' : '−')} y moves by {Math.Abs(dx + (sign * dy)) * 1000:0.##} mm."));
            }
        }
    }

    private static double StrandDifference(BeltPath belt, HeadPosition head) => belt.FirstStrand(head).Meters - belt.SecondStrand(head).Meters;
}
