using UnitsNet;

namespace PrinterMath.Measurement.Tests;

/// <summary>Examples in the text of JCGM 100:2008 (GUM), clauses 4 and 5; data and results from memory, checked against each other.</summary>
[Trait("Evidence", "Published")]
public sealed class GumEvaluationReferenceTests
{
    // 4.4.3 and table 1: twenty temperatures; mean 100.145 °C, s = 1.489 °C, u = 0.333 °C.
    [Fact]
    public void Twenty_repeated_temperatures()
    {
        double[] celsius =
        [
            96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
            100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72,
        ];
        Measured<TemperatureDelta> mean = Measured.FromReadings([.. celsius.Select(value => TemperatureDelta.FromKelvins(value))]);
        Assert.Equal(100.145, mean.SiValue, 1e-3);
        Assert.Equal(0.333, mean.SiStandardUncertainty, 5e-4);
        Assert.Equal(19, mean.DegreesOfFreedom);
        Assert.Equal(1.489, SampleSummary.Of(celsius).StandardDeviation, 5e-4);
    }

    // 4.3.7, example 1: expansion coefficient of copper, 16.52e-6 within ±0.40e-6: u = 0.23e-6.
    [Fact]
    public void A_rectangular_range() =>
        Assert.Equal(
            0.23e-6,
            Measured.FromRange(CoefficientOfThermalExpansion.FromPerKelvin(16.12e-6), CoefficientOfThermalExpansion.FromPerKelvin(16.92e-6)).SiStandardUncertainty,
            5e-9);

    // 4.3.3, example: 1 kg standard, certificate 240 µg at three standard deviations: u = 80 µg.
    [Fact]
    public void A_certificate() =>
        Assert.Equal(80e-9, Measured.FromCertificate(Mass.FromGrams(1000.000325), Mass.FromMicrograms(240), 3).SiStandardUncertainty, 1e-15);

    // F.2.2.1: one step of a digital display: u = 0.29 of the step.
    [Fact]
    public void A_display_with_steps() =>
        Assert.Equal(0.29, Measured.FromResolution(Length.FromMeters(5), Length.FromMeters(1)).SiStandardUncertainty, 5e-3);

    // 5.2.2, example: ten resistors of 1000 Ω calibrated against one standard with u = 100 mΩ, in series: u = 1 Ω, not the 0.32 Ω of independent ones.
    [Fact]
    public void Ten_resistors_against_one_standard()
    {
        BudgetInput[] resistors = [.. Enumerable.Range(1, 10).Select(i => BudgetInput.Of($"R{i}", Measured.Of(1000.0, 0.1)))];
        InputCorrelation[] same =
        [
            .. from i in Enumerable.Range(1, 10)
               from j in Enumerable.Range(1, i - 1)
               select new InputCorrelation($"R{i}", $"R{j}", 1),
        ];
        static double Series(ReadOnlySpan<double> x)
        {
            double sum = 0;
            foreach (double r in x)
            {
                sum += r;
            }

            return sum;
        }

        Assert.Equal(1.0, Propagation.FirstOrder<double>(Series, resistors, same).Result.SiStandardUncertainty, 1e-6);
        Assert.Equal(0.32, Propagation.FirstOrder<double>(Series, resistors).Result.SiStandardUncertainty, 5e-3);
    }

    // 5.1.6: relative variances of a product of powers add; here m/l with 0.3 % and 0.4 %: 0.5 % (the clause's formula (12), by hand).
    [Fact]
    public void Relative_variances_of_a_quotient_add()
    {
        Measured<double> quotient = Propagation.FirstOrder<double>(
            x => x[0] / x[1], [BudgetInput.Of("m", Measured.Of(8.0, 0.024)), BudgetInput.Of("l", Measured.Of(1.0, 0.004))]).Result;
        Assert.Equal(0.005, quotient.RelativeStandardUncertainty, 1e-6);
    }
}
