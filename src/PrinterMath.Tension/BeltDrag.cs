using PrinterMath.Measurement;

namespace PrinterMath.Tension;

/// <summary>Friction that rises with tension, as a ratio κ of it: κ = µ_b·B + c·n + (e^(µ_s·Θ) − 1).</summary>
/// <remarks>
/// B = Σ (d/(2r))·2·sin(θ/2) over turning pulleys of pitch radius r with bearings of bore d: the hub load is 2·T·sin(θ/2), its moment ½·µ_b·load·d. n counts those pulleys, Θ sums
/// the wraps of pins. The belt's force itself cancels to first order: what one strand gains the other loses.
/// </remarks>
internal sealed class BeltDrag
{
    private readonly double _bearings;
    private readonly int _bends;
    private readonly double _slidingWrap;

    private BeltDrag(BeltPath belt, HeadPosition head, double bore, IReadOnlyList<BudgetInput> inputs)
    {
        Inputs = inputs;
        for (int i = 0; i < belt.Pulleys.Count; i++)
        {
            double wrap = belt.WrapRadians(i + 1, head);
            if (belt.Pulleys[i].Kind == PulleyKind.SlidingPin)
            {
                _slidingWrap += wrap;
                continue;
            }

            _bearings += bore / belt.Pulleys[i].Node.Radius * Math.Sin(wrap / 2);
            _bends++;
        }
    }

    internal IReadOnlyList<BudgetInput> Inputs { get; }

    /// <summary>The belt and the place of the head with the largest ratio.</summary>
    internal static BeltDrag Worst(IReadOnlyList<BeltPath> belts, HeadTravel travel, BeltDriveOptions options)
    {
        double bore = Guard.Positive(options.BearingBore.Meters, nameof(options));
        Measured<double> bearing = options.BearingFriction ?? Measured.FromRange(0.001, 0.005);
        Measured<double> bending = options.BendingLoss ?? Measured.FromRange(0.0005, 0.004);
        Measured<double> sliding = options.SlidingFriction ?? Measured.FromRange(0.1, 0.3);
        Guard.Between(bearing.SiValue, 0, 0.1, nameof(options));
        Guard.Between(bending.SiValue, 0, 0.05, nameof(options));
        Guard.Between(sliding.SiValue, 0, 1, nameof(options));
        BudgetInput[] inputs = [BudgetInput.Of("bearing friction", bearing), BudgetInput.Of("bending loss", bending), BudgetInput.Of("sliding friction", sliding)];
        double[] x = [bearing.SiValue, bending.SiValue, sliding.SiValue];
        return belts.SelectMany(belt => travel.Grid().Select(head => new BeltDrag(belt, head, bore, inputs))).MaxBy(drag => drag.Ratio(x))!;
    }

    /// <summary>κ from <see cref="Inputs"/>, in that order.</summary>
    internal double Ratio(ReadOnlySpan<double> x) => (x[0] * _bearings) + (x[1] * _bends) + Math.Exp(x[2] * _slidingWrap) - 1;
}
