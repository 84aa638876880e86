using CommissioningPass.Inputs;
using CommissioningPass.Report;

namespace CommissioningPass.Steps;

internal static class TensionStep
{
    internal static PassStep Take(Recording beltA, Recording beltB, Readings readings, Limits limits) =>
        new("tension", "1. Tension", [], [], [], []);
}
