using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>A screw turned by a stepping motor: steps for a length, and the layer heights that end on a whole full step.</summary>
/// <remarks>
/// <para>Length of a full step: lead·(motor turns → screw turns)/steps. Between full steps a stepping motor holds its place less well, and less still under load: layers that are whole full steps repeat
/// the same magnetic places and band less (common practice, no source).</para>
/// <para>Source: geometry of a screw; lead = starts × pitch, ISO 5408 (from memory).</para>
/// </remarks>
/// <example><code>
/// LeadScrew z = LeadScrew.Of(Measured.Exact(Length.FromMillimeters(8)), fullStepsPerTurn: 200);
/// z.NearestWholeStepLayer(Length.FromMillimeters(0.25)); // 0.24 mm, 6 full steps of 0.04 mm
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class LeadScrew
{
    private const double Alike = 1e-9;

    private LeadScrew(Measured<Length> lead, int fullStepsPerTurn, int microsteps, double screwTurnsPerMotorTurn)
    {
        Lead = lead;
        FullStepsPerTurn = fullStepsPerTurn;
        Microsteps = microsteps;
        ScrewTurnsPerMotorTurn = screwTurnsPerMotorTurn;
    }

    /// <summary>Travel of the nut in one turn of the screw.</summary>
    public Measured<Length> Lead { get; }

    /// <summary>Full steps of the motor in one turn of it.</summary>
    public int FullStepsPerTurn { get; }

    /// <summary>Microsteps in one full step.</summary>
    public int Microsteps { get; }

    /// <summary>Turns of the screw for one turn of the motor, a ratio; 1 when directly coupled, 0.5 when geared down two to one.</summary>
    public double ScrewTurnsPerMotorTurn { get; }

    /// <summary>Travel of one full step.</summary>
    public Measured<Length> FullStep => Scaled(ScrewTurnsPerMotorTurn / FullStepsPerTurn);

    /// <summary>Travel of one microstep.</summary>
    public Measured<Length> Microstep => Scaled(ScrewTurnsPerMotorTurn / FullStepsPerTurn / Microsteps);

    /// <summary>Microsteps in one millimetre, with the uncertainty that the lead leaves.</summary>
    public Measured<double> StepsPerMillimeter
    {
        get
        {
            double steps = 1e-3 / Microstep.SiValue;
            return Measured<double>.FromSi(steps, steps * Lead.SiStandardUncertainty / Lead.SiValue, Lead.DegreesOfFreedom);
        }
    }

    /// <summary>A screw and its motor.</summary>
    /// <param name="lead">Travel of the nut in one turn, greater than zero; starts times pitch.</param>
    /// <param name="fullStepsPerTurn">Full steps in one turn of the motor: 200 for 1.8°, 400 for 0.9°.</param>
    /// <param name="microsteps">Microsteps in one full step, from 1 to 256.</param>
    /// <param name="screwTurnsPerMotorTurn">Turns of the screw for one turn of the motor, greater than zero.</param>
    /// <returns>The screw.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="InvalidOperationException">The lead was never measured.</exception>
    public static LeadScrew Of(Measured<Length> lead, int fullStepsPerTurn = 200, int microsteps = 16, double screwTurnsPerMotorTurn = 1)
    {
        Guard.Positive(lead.SiValue, nameof(lead));
        Guard.AtLeast(fullStepsPerTurn, 1);
        Guard.Between(microsteps, 1, 256);
        return new LeadScrew(lead, fullStepsPerTurn, microsteps, Guard.Positive(screwTurnsPerMotorTurn));
    }

    /// <summary>Whether a layer height is a whole number of full steps, to a billionth.</summary>
    /// <param name="layer">Layer height, greater than zero.</param>
    /// <returns>Whether it is.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is not positive.</exception>
    public bool IsWholeStepLayer(Length layer)
    {
        double steps = Guard.Positive(layer.Meters, nameof(layer)) / FullStep.SiValue;
        return Math.Round(steps) >= 1 && Math.Abs(steps - Math.Round(steps)) <= Alike * steps;
    }

    /// <summary>The layer height of whole full steps, one at least, nearest to a wanted one.</summary>
    /// <param name="wanted">Wanted layer height, greater than zero.</param>
    /// <returns>The height; halves go to the even number of steps.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is not positive.</exception>
    public Length NearestWholeStepLayer(Length wanted) =>
        Length.FromMeters(FullStep.SiValue * Math.Max(1, Math.Round(Guard.Positive(wanted.Meters, nameof(wanted)) / FullStep.SiValue)));

    /// <summary>All layer heights of whole full steps between two heights, both included.</summary>
    /// <param name="lowest">Lowest height, greater than zero.</param>
    /// <param name="highest">Highest height, not below the lowest, at most ten thousand full steps.</param>
    /// <returns>The heights in rising order; empty when none lies between.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A height is out of range.</exception>
    public IReadOnlyList<Length> WholeStepLayers(Length lowest, Length highest)
    {
        double step = FullStep.SiValue;
        double low = Guard.Positive(lowest.Meters, nameof(lowest));
        double high = Guard.Between(highest.Meters, low, 1e4 * step, nameof(highest));
        int first = Math.Max(1, (int)Math.Ceiling(low / step * (1 - Alike)));
        int last = (int)Math.Floor(high / step * (1 + Alike));
        return [.. Enumerable.Range(first, Math.Max(0, last - first + 1)).Select(k => Length.FromMeters(k * step))];
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Lead, full step and steps per millimetre.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"lead {Lead}, full step {FullStep.SiValue * 1e6:0.###} µm, {StepsPerMillimeter.SiValue:0.###} steps/mm");

    private Measured<Length> Scaled(double factor) =>
        Measured<Length>.FromSi(Lead.SiValue * factor, Lead.SiStandardUncertainty * factor, Lead.DegreesOfFreedom);
}
