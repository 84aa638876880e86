namespace PrinterMath.Measurement.Tests;

[Trait("Evidence", "Published")]
public class RobustStatisticsReferenceTests
{
    // Creosote interlaboratory means, as carried in the manual page algA of the R package metRology (LGC).
    private static readonly double[] Creosote = [24.140, 20.155, 19.500, 20.300, 20.705, 17.570, 20.100, 20.940, 21.185];

    // Median exact; 1.4826 MAD = 1.482602218505602 × 0.640, R 4.2.2 mad() prints .948864 with its constant 1.4826, 6 digits.
    [Fact]
    public void MedianAndDeviationOfCreosote()
    {
        Assert.Equal(20.3, Median.Of(Creosote), 1e-14);
        Assert.Equal(0.640, MedianAbsoluteDeviation.Unscaled(Creosote), 1e-13);
        Assert.Equal(0.948864, MedianAbsoluteDeviation.Of(Creosote) / MedianAbsoluteDeviation.NormalConsistency * 1.4826, 1e-12);
    }

    // MASS::hubers with k = 1.5 in R 4.2.2 gives μ 20.4121428571, s 1.06776646627: it stops after 30 steps, short of rest by 6e-6, and the same
    // 30 steps are taken here. Its start, mad() with the constant 1.4826, differs in the seventh digit, which 30 steps contract to 1e-10.
    [Fact]
    public void AlgorithmAOfCreosoteAfterThirtySteps()
    {
        RobustLocation consensus = AlgorithmA.Of(Creosote, new RobustLocationOptions { MaximumIterations = 30 });
        Assert.Equal(20.4121428571, consensus.Location, 5e-11);
        Assert.Equal(1.06776646627, consensus.Spread, 1e-10);
        Assert.Contains(consensus.Findings, f => f.Code == "robust.iterations");
    }

    // At rest one reading is limited on each side (24.140 and 17.570), so that m is the mean of the other seven and
    // s² = Σ₇(x − m)²/(8β − 2k²), with β(1.5) = 0.77846520 from tables of the normal distribution (Φ(1.5) = 0.9331927987,
    // φ(1.5) = 0.1295175957): 10 digits. The search rests to 1e-12.
    [Fact]
    public void AlgorithmAOfCreosoteAtRest()
    {
        RobustLocation consensus = AlgorithmA.Of(Creosote);
        double[] seven = [.. Creosote.Where(x => x is not (24.140 or 17.570))];
        double mean = seven.Sum() / 7;
        double inside = (2 * 0.9331927987) - 1;
        double beta = inside + (2.25 * (1 - inside)) - (3 * 0.1295175957);
        Assert.Equal(mean, consensus.Location, 1e-11);
        Assert.Equal(Math.Sqrt(seven.Sum(x => (x - mean) * (x - mean)) / ((8 * beta) - 4.5)), consensus.Spread, 1e-8);
        Assert.Equal(1.25 * consensus.Spread / 3, consensus.StandardUncertainty, 1e-12);
        Assert.Equal([0, 5], consensus.LimitedReadings);
        Assert.DoesNotContain(consensus.Findings, f => f.Code == "robust.iterations");
    }

    // Worked example: .10 .11 .12 .55 .13 .14 .12 has median .12, spread .014826 (constant 1.4826) and score 29.003 for .55;
    // 5 digits printed.
    [Fact]
    public void HampelFindsThePlantedReading()
    {
        OutlierReport report = HampelIdentifier.Find([0.10, 0.11, 0.12, 0.55, 0.13, 0.14, 0.12]);
        Assert.Equal(0.12, report.Median, 1e-15);
        Assert.Equal(0.014826, report.Spread, 5e-7);
        Assert.Equal(29.003, report.Scores[3], 5e-4);
        Assert.Equal([3], report.Indices);
    }
}
