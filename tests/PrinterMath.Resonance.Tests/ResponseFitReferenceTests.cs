using UnitsNet;
using Xunit.Abstractions;

namespace PrinterMath.Resonance.Tests;

[Trait("Evidence", "Published")]
public sealed class ResponseFitReferenceTests(ITestOutputHelper output)
{
    // Response of a struck structure (vibration_toolbox, case1): its authors' circle fit of one mode gives 212.092530551 Hz. Lines are 0.3125 Hz apart and the peak is 0.37 Hz wide: within a hundredth of that.
    [Fact]
    public void Struck_structure()
    {
        (double[] f, System.Numerics.Complex[] h) = DataFile.Response("vtoolbox_case1_frf.csv");
        ResponseFit fit = ResponseFit.Fit(Accelerance.FromValues(f, h), Between(200, 224) with { MostModes = 1 });
        output.WriteLine($"{fit}; rejected {string.Join(", ", fit.Rejected)}");
        Assert.Equal(212.092530551, fit.Dominant.Frequency.SiValue, 0.0037);
    }

    // Accelerance of a free beam (pyuff, measured point 1): frequencies of bending of a uniform free-free beam are as 1 : 2.7565 : 5.4039 : 8.9330 : 13.3443 : 18.6379, from cos βL·cosh βL = 1,
    // βL = 4.730041, 7.853205, 10.995608, 14.137165, 17.278760, 20.420352 (R. D. Blevins, Formulas for Natural Frequency and Mode Shape, 1979, table 8-1, from memory). A real beam keeps them within 0.5 %: shear and
    // rotary inertia lower the high ones.
    [Fact]
    public void Free_beam()
    {
        (double[] f, System.Numerics.Complex[] h) = DataFile.Response("pyuff_beam_accelerance_point1.csv");
        double[] roots = [4.730041, 7.853205, 10.995608, 14.137165, 17.278760, 20.420352];
        double[] found = new double[6];
        for (int n = 0; n < 6; n++)
        {
            double about = 51.5 * Math.Pow(roots[n] / roots[0], 2);
            ResponseFit fit = ResponseFit.Fit(Accelerance.FromValues(f, h), Between(about - 25, Math.Min(1000, about + 25)));
            output.WriteLine($"{about:F1}: {fit}; rejected {string.Join(", ", fit.Rejected)}");
            found[n] = fit.Dominant.Frequency.SiValue;
        }

        for (int n = 1; n < 6; n++)
        {
            double ratio = Math.Pow(roots[n] / roots[0], 2);
            Assert.Equal(ratio, found[n] / found[0], 0.005 * ratio);
        }
    }

    private static ResponseFitOptions Between(double lowest, double highest) => new()
    {
        LowestFrequency = Frequency.FromHertz(lowest),
        HighestFrequency = Frequency.FromHertz(highest),
        RelativeClockUncertainty = 0,
    };
}
