using PrinterMath.Measurement;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

[Trait("Evidence", "Published")]
public class TrammingPlanReferenceTests
{
    // Source: plane by R 4.2.2 (lm) through P9; turns = (h(110, 110) - h)/0.5 mm, printed with 7 decimals. Positive raises the bed.
    [Fact]
    public void TurnsOfThreeM3ScrewsAgreeWithR()
    {
        PlaneFit plane = PlaneFit.Fit(ReferenceBeds.P9());
        var options = new TrammingOptions { TargetHeight = plane.HeightAt(Mm(110), Mm(110)).Value };
        TrammingPlan plan = BedSupports.Of(Screw("left", 30, 30), Screw("right", 190, 30), Screw("rear", 110, 190)).Plan(plane, options);

        double[] expected = [.0237037, -.1659259, .0711111];
        double[] uncertainties = [.00942162, .00942162, .00758632]; // of the heights, mm, 8 decimals
        for (int i = 0; i < expected.Length; i++)
        {
            ScrewTurn turn = plan.Turns[i];
            Assert.Equal(Math.Abs(expected[i]), turn.Turns.SiValue, 5e-8);
            Assert.Equal(expected[i] * .5, turn.HeightChange.Millimeters(), 5e-8);
            Assert.Equal(uncertainties[i], turn.HeightChange.UncertaintyMillimeters(), 5e-9);
            Assert.Equal(expected[i] > 0 ? TurnSense.Counterclockwise : TurnSense.Clockwise, turn.Sense); // clockwise lowers
        }
    }

    // Source: worked by NumPy 1.24.2: corners of a 200 mm square at .10 .02 .06 .04: plane .075 - 1.5e-4 x - 5e-5 y, residuals +-.025,
    // twist t = (h1 - h2 + h3 - h4)/4. Exact decimals: rounding only.
    [Fact]
    public void TwistOfASquareAgreesWithItsClosedForm()
    {
        ProbePoint[] corners = [Point(0, 0, .10, .01), Point(200, 0, .02, .01), Point(200, 200, .06, .01), Point(0, 200, .04, .01)];
        PlaneFit plane = PlaneFit.Fit(corners);
        TrammingPlan plan = BedSupports.Of(Screw("a", 0, 0), Screw("b", 200, 0), Screw("c", 200, 200), Screw("d", 0, 200)).Plan(plane);

        Assert.Equal(.075, plane.HeightAt(Mm(0), Mm(0)).Millimeters(), 1e-12);
        Assert.Equal(-1.5e-4, plane.SlopeX.SiValue, 1e-15);
        Assert.Equal(-5e-5, plane.SlopeY.SiValue, 1e-15);
        double[] signs = [1, -1, 1, -1];
        Assert.All(plane.Residuals, r => Assert.Equal(.025 * signs[r.Index], r.Value.Millimeters, 1e-12));
        Assert.Equal(.025, plan.Twist!.Amplitude.Millimeters(), 1e-12);
        Assert.Equal(.005, plan.Twist.Amplitude.UncertaintyMillimeters(), 1e-12); // sigma/sqrt(4)
        Assert.True(plan.Twist.IsSignificant);
        Assert.Contains(plan.Findings, f => f.Code == "twist.significant");
    }
}
