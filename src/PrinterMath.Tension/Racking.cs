using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Racking of the cross-beam by unequal tensions: M = (T_A − T_B)·W turns it by M/k_rack on top of what rails and frame are out of square by themselves.</summary>
/// <remarks>
/// <para>From squareness at two tension differences D: φ = φ₀ + D·W/k_rack, so 1/k_rack = (φ₂ − φ₁)/((D₂ − D₁)·W). One print that is out of square does not tell belts from frame: it
/// gives no more than <see cref="LargestDifference"/>.</para>
/// Source: statics; Hooke's law.
/// </remarks>
/// <example><code>
/// Racking racking = Racking.FromReadings(beamWidth, before, after);
/// Measured&lt;Angle&gt; left = racking.SkewAt(Measured.Exact(Force.Zero)).Result;   // what rails and frame are out of square by themselves
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Racking
{
    private const double OneSided95 = 1.645;
    private readonly BudgetInput[] _inputs;
    private readonly UncertaintyBudget<RotationalStiffness>? _stiffness;
    private readonly double? _leastStiffness;
    private readonly ReadOnlyCollection<Finding> _findings;

    private Racking(BudgetInput[] inputs, UncertaintyBudget<RotationalStiffness>? stiffness, double? leastStiffness, params Finding[] findings)
    {
        _inputs = inputs;
        _stiffness = stiffness;
        _leastStiffness = leastStiffness;
        _findings = Array.AsReadOnly(findings);
    }

    /// <summary>What was noticed, see <see cref="DriveFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>k_rack with its budget, positive.</summary>
    /// <exception cref="IndeterminateException">The readings do not show it.</exception>
    public UncertaintyBudget<RotationalStiffness> Stiffness => _stiffness ?? throw new IndeterminateException(_findings[0]);

    /// <summary>k_rack, if the readings show it.</summary>
    /// <param name="stiffness">The stiffness, or the default.</param>
    /// <returns>Whether they do.</returns>
    public bool TryGetStiffness(out Measured<RotationalStiffness> stiffness)
    {
        stiffness = _stiffness?.Result ?? default;
        return _stiffness is not null;
    }

    /// <summary>What k_rack is at least, at 95 %, also where squareness did not visibly change.</summary>
    /// <param name="stiffness">The bound, or zero.</param>
    /// <returns>Whether there is one: the two tension differences must differ.</returns>
    public bool TryGetLeastStiffness(out RotationalStiffness stiffness)
    {
        stiffness = RotationalStiffness.FromNewtonMetersPerRadian(_leastStiffness ?? 0);
        return _leastStiffness is not null;
    }

    /// <summary>Learns from squareness at two tension differences.</summary>
    /// <param name="beamWidth">Lever W between the lines along which the belts pull the beam, greater than zero.</param>
    /// <param name="first">One reading.</param>
    /// <param name="second">Another, with a different tension difference.</param>
    /// <returns>The racking; when the readings do not show it, its findings say why.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The width is not positive.</exception>
    public static Racking FromReadings(Measured<Length> beamWidth, SkewReading first, SkewReading second)
    {
        Guard.Positive(beamWidth.SiValue, nameof(beamWidth));
        Guard.NotNull(first);
        Guard.NotNull(second);
        BudgetInput[] inputs =
        [
            BudgetInput.Of("beam width", beamWidth),
            BudgetInput.Of("tension difference 1", first.TensionDifference), BudgetInput.Of("tension difference 2", second.TensionDifference),
            BudgetInput.Of("skew 1", first.Skew), BudgetInput.Of("skew 2", second.Skew),
        ];
        Measured<Force> change = Propagation.FirstOrder<Force>(x => x[2] - x[1], inputs).Result;
        if (change.SiValue == 0 || change.Interval().Contains(Force.Zero))
        {
            return new Racking(inputs, null, null, new Finding(
                DriveFindings.DifferencesAlike,
                FindingSeverity.Blocking,
                $"The tension difference changed by {change}, which may be nothing: make one belt clearly tighter for the second reading, within its window.",
                new FindingNumber("change", change.SiValue, "N"),
                new FindingNumber("standardUncertainty", change.SiStandardUncertainty, "N")));
        }

        Measured<double> compliance = Propagation.FirstOrder<double>(PerMoment, inputs).Result;
        double least = 1 / (Math.Abs(compliance.SiValue) + (OneSided95 * compliance.SiStandardUncertainty));
        double? bound = double.IsFinite(least) ? least : null;
        Measured<Angle> turned = Propagation.FirstOrder<Angle>(x => x[4] - x[3], inputs).Result;
        return turned.SiValue == 0 || turned.Interval().Contains(Angle.Zero)
            ? new Racking(inputs, null, bound, new Finding(
                DriveFindings.RackingNotSeen,
                FindingSeverity.Blocking,
                $"Squareness changed by {turned}, which may be nothing: unequal belts do not rack this beam as far as these readings can show.",
                new FindingNumber("change", turned.SiValue, "rad"),
                new FindingNumber("standardUncertainty", turned.SiStandardUncertainty, "rad")))
            : new Racking(inputs, Propagation.FirstOrder<RotationalStiffness>(x => Math.Abs(1 / PerMoment(x)), inputs), bound);
    }

    /// <summary>Skew to expect at a tension difference: φ₁ + (D − D₁)·(φ₂ − φ₁)/(D₂ − D₁); at zero what rails and frame are out of square by themselves.</summary>
    /// <param name="tensionDifference">T_A − T_B, measured otherwise than in the readings.</param>
    /// <returns>The skew with its budget.</returns>
    /// <exception cref="IndeterminateException">The tension differences of the readings are too alike.</exception>
    public UncertaintyBudget<Angle> SkewAt(Measured<Force> tensionDifference) => _leastStiffness is not null
        ? Propagation.FirstOrder<Angle>(
            x => x[3] + ((x[5] - x[1]) * (x[4] - x[3]) / (x[2] - x[1])), [.. _inputs, BudgetInput.Of("tension difference", tensionDifference)])
        : throw new IndeterminateException(_findings[0]);

    /// <summary>The most that two tensions can differ on a machine whose beam is out of square by φ, at 95 %: k_rack·|φ|/W, widened by its uncertainty.</summary>
    /// <param name="skew">Departure from square of one print.</param>
    /// <param name="stiffness">k_rack of the beam, greater than zero.</param>
    /// <param name="beamWidth">Lever W, greater than zero.</param>
    /// <returns>The bound on |T_A − T_B|.</returns>
    /// <remarks>An upper bound only: rails and frame skew too. It fails where they skew against the belts, so that both partly cancel.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    public static Force LargestDifference(Measured<Angle> skew, Measured<RotationalStiffness> stiffness, Measured<Length> beamWidth)
    {
        Guard.Positive(stiffness.SiValue, nameof(stiffness));
        Guard.Positive(beamWidth.SiValue, nameof(beamWidth));
        Measured<Force> difference = Propagation.FirstOrder<Force>(
            x => x[0] * x[1] / x[2], [BudgetInput.Of("skew", skew), BudgetInput.Of("racking stiffness", stiffness), BudgetInput.Of("beam width", beamWidth)]).Result;
        return Force.FromNewtons(Math.Abs(difference.SiValue) + (OneSided95 * difference.SiStandardUncertainty));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The stiffness, or the finding that stands in its place.</returns>
    public override string ToString() => _stiffness?.Result.ToString() ?? _findings[0].ToString();

    /// <summary>1/k_rack, of either sign, from the inputs in order.</summary>
    private static double PerMoment(ReadOnlySpan<double> x) => (x[4] - x[3]) / ((x[2] - x[1]) * x[0]);
}
