using PrinterMath.Measurement;
using PrinterMath.Tension;
using UnitsNet;

namespace PrinterMath.Architecture.Tests;

/// <summary>The code that README shows, compiled and run.</summary>
internal static class ReadmeExample
{
    internal static void Run(SampledSignal recording)
    {
        #region readme
        Measured<Length> length = Measured.Of(Length.FromMillimeters(242), Length.FromMillimeters(0.5));
        Measured<LinearDensity> density = LinearDensityOf.Sample(
            Measured.FromResolution(Mass.FromGrams(8.41), Mass.FromGrams(0.01)),
            Measured.Of(Length.FromMillimeters(1000), Length.FromMillimeters(0.5)));
        var span = new BeltSpan(length, density);

        PluckReading pluck = Pluck.Read(recording);
        if (!pluck.TryGetFundamental(out Measured<Frequency> heard)) { return; }
        UncertaintyBudget<Force> tension = span.TensionFor(heard).Budget;
        Verdict<Force> verdict = Tolerance.Between(Force.FromNewtons(20), Force.FromNewtons(30)).Judge(tension);
        Console.WriteLine($"{verdict}; most of the uncertainty is in the {tension.Largest.Input.Name}");
        #endregion
    }
}
