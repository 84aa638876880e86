using CommissioningPass.Inputs;
using CommissioningPass.Report;
using PrinterMath.Measurement;

namespace CommissioningPass.Steps;

internal static class TrammingStep
{
    internal static PassStep Take(IReadOnlyList<ProbePoint> probed, IReadOnlyList<BedScrew> screws, Limits limits) =>
        new("tramming", "2. Tramming", [], [], [], []);
}
