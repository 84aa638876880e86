using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

[Properties(Arbitrary = [typeof(BedArbitraries)], MaxTest = 200)]
public class TrammingPlanProperties
{
    private static readonly PlaneFitOptions FourMicrons = new() { ProbeRepeatability = Length.FromMicrometers(4) };

    [Property]
    public Property TurningByThePlanLevelsTheBed(BedCase bed, bool right, bool four)
    {
        (double X, double Y)[] places = four ? [(-10, -20), (230, 0), (200, 210), (5, 190)] : [(-10, 30), (230, 0), (120, 240)];
        Handedness hand = right ? Handedness.Right : Handedness.Left;
        ScrewThread thread = ScrewThread.IsoCoarse("M4", hand);
        AdjustingScrew[] screws =
        [
            .. places.Select((p, i) => AdjustingScrew.At($"s{i}", Mm(p.X), Mm(p.Y), thread, thread.Clockwise(HandPosition.BelowBed, TurnedPart.StaysWithFrame))),
        ];
        TrammingPlan plan = BedSupports.Of(screws).Plan(PlaneFit.Fit(bed.Exact(), FourMicrons), new TrammingOptions { KeepStill = "s1" });

        // a right-hand nut under the bed, turned clockwise as seen from below, lowers the bed by 0.7 mm a turn; a left-hand one raises it
        double[] after = [.. plan.Turns.Select((turn, i) =>
        {
            double clockwise = turn.Turns.SiValue * (turn.Sense == TurnSense.Clockwise ? 1 : -1);
            return bed.Height(places[i].X, places[i].Y) + (clockwise * (right ? -.7 : .7));
        })];
        return (after.Max() - after.Min() < 1e-11).ToProperty(); // rounding of heights of some mm
    }

    [Property]
    public Property ChangesDoNotDependOnTheOffset(BedCase bed)
    {
        var supports = BedSupports.Of(Screw("a", 0, 0), Screw("b", 200, 10), Screw("c", 90, 200));
        JointEstimate one = supports.Plan(PlaneFit.Fit(bed.Scattered())).HeightChanges;
        JointEstimate other = supports.Plan(PlaneFit.Fit(BedCase.Map(bed.Scattered(), p => (p.XMeters, p.YMeters, p.ZMeters + .01)))).HeightChanges;
        return Enumerable.Range(0, 3).All(i =>
            Math.Abs(one.Estimate<Length>(i).SiValue - other.Estimate<Length>(i).SiValue) < 1e-12
            && Math.Abs(one.Covariance(i, i) - other.Covariance(i, i)) <= 1e-9 * one.Covariance(i, i)).ToProperty();
    }

    [Property]
    public Property PredictedHeightsCarryTheUncertaintyOfThePlane(BedCase bed)
    {
        PlaneFit plane = PlaneFit.Fit(bed.Scattered());
        PredictedPlane predicted = BedSupports.Of(Screw("a", 0, 0), Screw("b", 200, 10), Screw("c", 90, 200)).Plan(plane).PredictedPlane;
        Measured<Length> height = predicted.HeightAt(Mm(33), Mm(44));
        return (height.SiValue.Equals(predicted.HeightAt(Mm(0), Mm(0)).SiValue)
            && height.SiStandardUncertainty.Equals(plane.HeightAt(Mm(33), Mm(44)).SiStandardUncertainty)).ToProperty();
    }
}
