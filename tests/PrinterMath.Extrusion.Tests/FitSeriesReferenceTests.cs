namespace PrinterMath.Extrusion.Tests;

/// <summary>The probit model against a maximum-likelihood fit of a published data set.</summary>
[Trait("Evidence", "Published")]
public sealed class FitSeriesReferenceTests
{
    // Bliss 1935, Annals of Applied Biology 22, 134 to 167: beetles killed at a log dose, as tabulated by Dobson (from memory).
    // A beetle that survives counts as a piece that fits.
    private static readonly (double Dose, int Treated, int Killed)[] Beetles =
    [
        (1.6907, 59, 6), (1.7242, 60, 13), (1.7552, 62, 18), (1.7842, 56, 28), (1.8113, 63, 52), (1.8369, 59, 53), (1.8610, 62, 61), (1.8839, 60, 60),
    ];

    // Maximum likelihood by iterated weighted least squares in NumPy 1.24.2: b = (−34.9352589, 19.7279342), so µ = 1.77085236 ± 0.00380334 (delta method),
    // σ = 1/19.7279342 = 0.05069 ± 0.00382. With 481 answers prior and grid matter little: µ within a fifth of its uncertainty, u within
    // 10 %, σ within one uncertainty, since neighbouring σ of the grid are 30 % apart.
    [Fact]
    public void Probit_fit_of_the_beetle_data()
    {
        FitSeries series = FitSeries.Between(1.65, 1.90, new FitSeriesOptions { FlowStep = 0.01 });
        foreach ((double dose, int treated, int killed) in Beetles)
        {
            for (int i = 0; i < treated; i++)
            {
                series = series.With(dose, i < killed ? FitOutcome.DoesNotFit : FitOutcome.Fits);
            }
        }

        FitEstimate estimate = series.Estimate;
        Assert.Equal(1.77085236, estimate.Flow.SiValue, 0.2 * 0.00380334);
        Assert.InRange(estimate.Flow.SiStandardUncertainty, 0.9 * 0.00380334, 1.1 * 0.00380334);
        Assert.Equal(0.05069, estimate.TransitionDeviation.SiValue, 0.00382);
        Assert.InRange((estimate.Upper - estimate.Lower) / (2 * 1.96 * 0.00380334), 0.9, 1.1);
    }
}
