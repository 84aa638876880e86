using UnitsNet;

namespace PrinterMath.Measurement.Tests;

/// <summary>Worked examples of JCGM 100:2008 (GUM), Annex H.</summary>
[Trait("Evidence", "Published")]
public sealed class GumReferenceTests
{
    private const double Nano = 1e-9;

    // JCGM 100:2008, H.1.3.2: the difference d from its three components. The GUM prints 9.7 nm and, from that rounded value, 25.6; by hand without
    // rounding √93.74 = 9.6819 nm and 93.74²/345.31 = 25.447.
    [Fact]
    public void H1_components_of_the_difference()
    {
        Measured<Length> difference = Propagation.FirstOrder<Length>(
            x => x[0] + x[1] + x[2],
            [
                BudgetInput.Of("repeated observations", Measured<Length>.FromSi(215 * Nano, 5.8 * Nano, 24)),
                BudgetInput.Of("random effects of comparator", Measured<Length>.FromSi(0, 3.9 * Nano, 5)),
                BudgetInput.Of("systematic effects of comparator", Measured<Length>.FromSi(0, 6.7 * Nano, 8)),
            ]).Result;
        Assert.Equal(9.6819, difference.SiStandardUncertainty / Nano, 5e-5);
        Assert.Equal(25.447, difference.DegreesOfFreedom, 1e-3);
    }

    /// <summary>JCGM 100:2008, H.1, end-gauge calibration; inputs as rounded in table H.1.</summary>
    private static UncertaintyBudget<Length> EndGauge()
    {
        // l = l_s + d − l_s(δα·θ + α_s·δθ), equation (H.3).
        return Propagation.FirstOrder<Length>(
            x => x[0] + x[1] - (x[0] * ((x[2] * x[3]) + (x[4] * x[5]))),
            [
                BudgetInput.Of("standard", Measured<Length>.FromSi(50_000_623 * Nano, 25 * Nano, 18)),
                BudgetInput.Of("difference", Measured<Length>.FromSi(215 * Nano, 9.7 * Nano, 25.6)),
                BudgetInput.Of("difference of expansion", Measured<CoefficientOfThermalExpansion>.FromSi(0, 0.58e-6, 50)),
                BudgetInput.Of("temperature of the bed", Measured<TemperatureDelta>.FromSi(-0.1, 0.41)),
                BudgetInput.Of("expansion of the standard", Measured<CoefficientOfThermalExpansion>.FromSi(11.5e-6, 1.2e-6)),
                BudgetInput.Of("difference of temperature", Measured<TemperatureDelta>.FromSi(0, 0.029, 2)),
            ]);
    }

    [Fact]
    public void H1_value_and_combined_uncertainty()
    {
        Measured<Length> length = EndGauge().Result;

        // The GUM prints 50.000838 mm and u_c = 32 nm; 31.7106 nm evaluated with NumPy from the same inputs.
        Assert.Equal(50_000_838, length.SiValue / Nano, 0.5);
        Assert.Equal(31.7106, length.SiStandardUncertainty / Nano, 5e-4);
    }

    [Fact]
    public void H1_degrees_of_freedom_and_expanded_uncertainty()
    {
        Measured<Length> length = EndGauge().Result;
        ExpandedInterval<Length> interval = length.Interval(0.99);

        // The GUM prints ν_eff = 16 (truncated), t_99(16) = 2.92 and U_99 = 93 nm (from u_c rounded up to 32 nm); the tail of 0.058 nm in 92.62 is that rounding.
        Assert.Equal(16.656, length.DegreesOfFreedom, 5e-3);
        Assert.Equal(2.92078, interval.CoverageFactor, 5e-6);
        Assert.Equal(2.92078 * 31.7106, interval.ExpandedUncertainty.Nanometers, 5e-3);
    }

    [Fact]
    public void H1_contributions_rank_as_in_the_table()
    {
        BudgetLine[] lines = [.. EndGauge().Lines.Where(line => line.VarianceShare > 0)];

        // Table H.1: 25, 16.6 (16.675 with NumPy), 9.7, 2.9 nm.
        Assert.Equal(["standard", "difference of temperature", "difference", "difference of expansion"], lines.Select(line => line.Input.Name));
        Assert.Equal(25, lines[0].SiContribution / Nano, 1e-6);
        Assert.Equal(16.675, lines[1].SiContribution / Nano, 1e-3);
        Assert.Equal(9.7, lines[2].SiContribution / Nano, 1e-4);
        Assert.Equal(2.900, lines[3].SiContribution / Nano, 1e-3);
    }

    /// <summary>JCGM 100:2008, H.2: five joint readings of voltage, current and phase.</summary>
    private static JointEstimate Impedance()
    {
        double[] volts = [5.007, 4.994, 5.005, 4.990, 4.999];
        double[] milliamperes = [19.663, 19.639, 19.640, 19.685, 19.678];
        double[] radians = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
        JointEstimate readings = JointEstimate.FromReadings(
            ["V", "I", "phi"],
            ["V", "A", "rad"],
            [.. Enumerable.Range(0, 5).Select(k => new[] { volts[k], milliamperes[k] / 1000, radians[k] })]);
        return Propagation.FirstOrder(
            [
                new JointOutput("R", "Ohm", x => x[0] / x[1] * Math.Cos(x[2])),
                new JointOutput("X", "Ohm", x => x[0] / x[1] * Math.Sin(x[2])),
                new JointOutput("Z", "Ohm", x => x[0] / x[1]),
            ],
            readings.Inputs,
            readings.Correlations);
    }

    [Fact]
    public void H2_values_and_uncertainties()
    {
        JointEstimate z = Impedance();

        // Printed: R 127.732(71), X 219.847(295), Z 254.260(236); uncertainties to five digits with NumPy (X is 0.29558, the GUM prints 0.295).
        Assert.Equal(127.732, z.Inputs[0].SiValue, 5e-4);
        Assert.Equal(219.847, z.Inputs[1].SiValue, 5e-4);
        Assert.Equal(254.260, z.Inputs[2].SiValue, 5e-4);
        Assert.Equal(0.07107, z.Inputs[0].SiStandardUncertainty, 5e-6);
        Assert.Equal(0.29558, z.Inputs[1].SiStandardUncertainty, 5e-6);
        Assert.Equal(0.23634, z.Inputs[2].SiStandardUncertainty, 5e-6);
        Assert.Equal(4, z.DegreesOfFreedom, 1e-9);
    }

    [Fact]
    public void H2_correlations()
    {
        JointEstimate z = Impedance();

        // Printed: −0.588, −0.485, 0.993; five digits with NumPy.
        Assert.Equal(-0.58843, z.Correlation(0, 1), 5e-6);
        Assert.Equal(-0.48526, z.Correlation(0, 2), 5e-6);
        Assert.Equal(0.99251, z.Correlation(1, 2), 5e-6);
    }

    // JCGM 100:2008, 7.2.2: m_S = 100.021 47 g with u = 0.35 mg is written 100.021 47(35) g.
    [Fact]
    public void Concise_notation_of_clause_7() =>
        Assert.Equal("100.02147(35) g", Measured.Of(Mass.FromGrams(100.02147), Mass.FromMilligrams(0.35)).ToString("S2"));

    // JCGM 100:2008, table G.2: t_p(ν) at 95 % and 99 %.
    [Theory]
    [InlineData(1, 12.71, 63.66)]
    [InlineData(4, 2.78, 4.60)]
    [InlineData(10, 2.23, 3.17)]
    [InlineData(16, 2.12, 2.92)]
    [InlineData(50, 2.01, 2.68)]
    [InlineData(double.PositiveInfinity, 1.960, 2.576)]
    public void Coverage_factors_of_table_G2(double degreesOfFreedom, double k95, double k99)
    {
        Measured<Length> length = Measured<Length>.FromSi(0, 1, degreesOfFreedom);
        Assert.Equal(k95, length.Interval(0.95).CoverageFactor, 5.1e-3);
        Assert.Equal(k99, length.Interval(0.99).CoverageFactor, 5.1e-3);
    }
}
