using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

/// <summary>Twelve invented beds with limits, solved by SciPy 1.10.1 (Data/limits_reference.py: non-negative least squares and linear programs).</summary>
[Trait("Evidence", "Published")]
public class LimitsReferenceTests
{
    public static TheoryData<int> Cases() => [.. Enumerable.Range(0, Lines().Length)];

    // Source: the script beside the data. Millimetres; SciPy's solvers end within 1e-9 of the slopes' size and of the turns.
    [Theory]
    [MemberData(nameof(Cases))]
    public void PlansAgreeWithSciPy(int index)
    {
        double[][] columns = [.. Lines()[index].Split(';').Select(Numbers)];
        (double[] x, double[] y, double[] lead, double[] low, double[] high, double[] plane) = (columns[1], columns[2], columns[3], columns[4], columns[5], columns[6]);
        var supports = BedSupports.Of([.. x.Select((_, i) => AdjustingScrew.At($"s{i}", Mm(x[i]), Mm(y[i]), ScrewThread.FromLead(Mm(lead[i])), BedMotion.Raises))]);
        PlaneFit fit = PlaneFit.Fit(
            [.. Enumerable.Range(0, 20).Select(i => (X: i % 5 * 60.0, Y: i / 5 * 60.0)).Select(p => Point(p.X, p.Y, plane[0] + (plane[1] * p.X) + (plane[2] * p.Y)))],
            new PlaneFitOptions { ProbeRepeatability = Length.FromMicrometers(4) });

        TrammingPlan limited = supports.Plan(fit, new TrammingOptions { Limits = [.. x.Select((_, i) => TravelLimit.Between($"s{i}", Mm(low[i]), Mm(high[i])))] });
        if (columns[8].Length == 0)
        {
            Finding finding = Assert.Single(limited.Findings, f => f.Code == "plan.limits.infeasible");
            Assert.Equal(columns[7][0], finding.Numbers.Single(n => n.Name == "leastExcess").Value * 1e3, 1e-9);
            Assert.False(limited.IsDeterminate);
        }
        else
        {
            Assert.Equal(columns[8][0], limited.PredictedPlane.SlopeX.SiValue, 1e-10);
            Assert.Equal(columns[8][1], limited.PredictedPlane.SlopeY.SiValue, 1e-10);
            Assert.Contains(limited.Findings, f => f.Code == "plan.limits.bind");
        }

        Assert.Equal(columns[9][0], supports.Plan(fit, new TrammingOptions { LeastTotalTurning = true }).TotalTurns, 1e-9);
    }

    private static string[] Lines() =>
        [.. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Data", "limits_reference.csv")).Where(line => !line.StartsWith('#'))];

    private static double[] Numbers(string part) =>
        [.. part.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(value => double.Parse(value, CultureInfo.InvariantCulture))];
}
