using System.Diagnostics;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>The belt of an axis with a motor of its own.</summary>
/// <remarks>The axis is drawn along x, whichever axis of the machine it is.</remarks>
/// <example><code>SingleAxisLayout axis = SingleAxisLayout.From(dimensions);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class SingleAxisLayout
{
    /// <summary>A belt of the caller's own drawing.</summary>
    /// <param name="belt">The belt.</param>
    /// <param name="travel">Where the carriage goes.</param>
    public SingleAxisLayout(BeltPath belt, HeadTravel travel)
    {
        Belt = Guard.NotNull(belt);
        Travel = Guard.NotNull(travel);
    }

    /// <summary>The belt.</summary>
    public BeltPath Belt { get; }

    /// <summary>Where the carriage goes.</summary>
    public HeadTravel Travel { get; }

    /// <summary>The belt from a few dimensions: carriage, motor pulley, back under the carriage to the idler, carriage.</summary>
    /// <param name="dimensions">The dimensions.</param>
    /// <returns>The layout.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is not positive, or the travel drives the carriage into a pulley or out of the frame.</exception>
    public static SingleAxisLayout From(SingleAxisDimensions dimensions)
    {
        Guard.NotNull(dimensions);
        double far = Guard.Positive(dimensions.CentreDistance.Meters, nameof(dimensions));
        double half = Guard.Positive(dimensions.CarriageLength.Meters, nameof(dimensions)) / 2;
        double pulley = Guard.Positive(dimensions.PulleyRadius.Meters, nameof(dimensions));
        double idler = Guard.Positive((dimensions.IdlerRadius ?? dimensions.PulleyRadius).Meters, nameof(dimensions));
        HeadTravel travel = Guard.NotNull(dimensions.Travel, nameof(dimensions));
        if (travel.Lowest.MetersX <= half + pulley || travel.Highest.MetersX >= far - half - idler || travel.Highest.MetersY > travel.Lowest.MetersY)
        {
            throw Guard.Out(nameof(SingleAxisDimensions.Travel), travel, FormattableString.Invariant(
                $"along x, between {(half + pulley) * 1000:0.#} and {(far - half - idler) * 1000:0.#} mm from the motor shaft"));
        }

        // Followed from the carriage towards the motor, the belt comes back below: both centres lie to the left of it.
        return new SingleAxisLayout(
            new BeltPath(
                "belt",
                new BeltEnd("carriage, motor side", new(-half, pulley)),
                [
                    new BeltPulley("motor", PulleyKind.Motor, new(0, 0), dimensions.PulleyRadius, WrapSide.Left),
                    new BeltPulley("idler", PulleyKind.BearingIdler, new(far, pulley - idler), Length.FromMeters(idler), WrapSide.Left),
                ],
                new BeltEnd("carriage, idler side", new(half, pulley))),
            travel);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Belt and travel.</returns>
    public override string ToString() => $"single axis, {Belt}; travel {Travel}";
}
