using CommissioningPass.Inputs;
using CommissioningPass.Report;
using PrinterMath.Measurement;
using PrinterMath.Tramming;
using UnitsNet;

namespace CommissioningPass.Steps;

/// <summary>Where the nozzle touches the bed in printing: contact found by hand, less the gauge, with what grows when both are hot.</summary>
internal static class ZeroHeight
{
    private const string Caution = "Set a new zero from above with the gap in view: a wrong sign drives the nozzle into the bed.";

    internal static PassStep Add(PassStep step, IReadOnlyList<ContactTrial>? trials, Readings readings, Warming warming)
    {
        if (trials is null)
        {
            return step with { WouldAdd = [.. step.WouldAdd, "contact.csv, heights at which the nozzle or a gauge under it was clear or touched, would add height zero."] };
        }

        ContactTransition contact = readings.Holds(ReadingKind.GaugeThickness)
            ? ContactTransition.Fit(trials, readings.Of<Length>(ReadingKind.GaugeThickness))
            : ContactTransition.Fit(trials);
        step = step with { Findings = [.. step.Findings, .. contact.Findings.Select(finding => (ContactReadings.File, finding))] };
        if (!contact.TryGetSurfaceHeight(out Measured<Length> surface))
        {
            return step;
        }

        HeightZero zero = HeightZero.From(surface, new HeightZeroOptions { NozzleGrowth = warming.Nozzle, BedGrowth = warming.Bed });
        return step with
        {
            Entries =
            [
                .. step.Entries,
                PassEntry.Of("tramming.zero.contact", "Bare contact at", surface, "mm"),
                .. warming is { Nozzle: null, Bed: null } ? Array.Empty<PassEntry>() : [PassEntry.Of("tramming.zero.growth", "Hot, higher by", zero.Offset, "mm")],
                PassEntry.Of("tramming.zero.height", "Height zero, hot", zero.Height, "mm", "put the axis here plus the first layer's gap"),
            ],
            Findings = [.. step.Findings, .. zero.Findings.Select(finding => (ContactReadings.File, finding))],
            Remarks = [.. step.Remarks, FormattableString.Invariant($"Of the variance of height zero {zero.Budget.Largest.VarianceShare * 100:0} % come from '{zero.Budget.Largest.Input.Name}'; it holds at the place of the trials alone.")],
            ToDo = [.. step.ToDo, $"Set height zero of the hot machine to {Spelling.Of(zero.Height.ToString("S mm"))} of the axis."],
            Cautions = [.. step.Cautions, Caution],
        };
    }
}
