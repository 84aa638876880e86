using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

/// <summary>Laws of the plane fit. Rounding is allowed 1e-12 of the largest height (5 mm) or of the uncertainty concerned, a thousand ulps over at most 36 points.</summary>
[Properties(Arbitrary = [typeof(BedArbitraries)], MaxTest = 200)]
public class PlaneFitProperties
{
    private const double Rounding = 1e-12;
    private static readonly PlaneFitOptions FourMicrons = new() { ProbeRepeatability = Length.FromMicrometers(4) };

    [Property]
    public Property AnExactPlaneIsRecovered(BedCase bed)
    {
        PlaneFit plane = PlaneFit.Fit(bed.Exact(), FourMicrons);
        return (Near(plane.SlopeX.SiValue, bed.SlopeX)
            && Near(plane.SlopeY.SiValue, bed.SlopeY)
            && Near(plane.HeightAt(Mm(333), Mm(-77)).Millimeters(), bed.Height(333, -77), 10)
            && plane.Outliers.Count == 0).ToProperty();
    }

    [Property]
    public Property ResidualsAreOrthogonalToThePlane(BedCase bed)
    {
        PlaneFit plane = PlaneFit.Fit(bed.Scattered());
        double sum = 0, alongX = 0, alongY = 0, leverage = 0;
        foreach (PlaneResidual r in plane.Residuals)
        {
            sum += r.SiValue;
            alongX += r.SiValue * plane.Points[r.Index].XMeters;
            alongY += r.SiValue * plane.Points[r.Index].YMeters;
            leverage += r.Leverage;
        }

        return (Near(sum, 0) && Near(alongX, 0) && Near(alongY, 0) && Near(leverage, 3)).ToProperty();
    }

    [Property]
    public Property MovingTheFrameMovesTheHeightsAlone(BedCase bed)
    {
        PlaneFit here = PlaneFit.Fit(bed.Scattered());
        PlaneFit there = PlaneFit.Fit(BedCase.Map(bed.Scattered(), p => (p.XMeters + .15, p.YMeters - .4, p.ZMeters + .003)));
        Measured<Length> a = here.HeightAt(Mm(40), Mm(60));
        Measured<Length> b = there.HeightAt(Mm(190), Mm(-340));
        return (Near(b.SiValue, a.SiValue + .003)
            && Alike(a.SiStandardUncertainty, b.SiStandardUncertainty)
            && Near(here.SlopeX.SiValue, there.SlopeX.SiValue)
            && Alike(here.SlopeX.SiStandardUncertainty, there.SlopeX.SiStandardUncertainty)
            && Alike(here.HeightSpread.SiStandardUncertainty, there.HeightSpread.SiStandardUncertainty)).ToProperty();
    }

    [Property]
    public Property AQuarterTurnTurnsTheSlopes(BedCase bed)
    {
        PlaneFit here = PlaneFit.Fit(bed.Scattered());
        PlaneFit turned = PlaneFit.Fit(BedCase.Map(bed.Scattered(), p => (-p.YMeters, p.XMeters, p.ZMeters)));
        return (Near(turned.SlopeY.SiValue, here.SlopeX.SiValue)
            && Near(turned.SlopeX.SiValue, -here.SlopeY.SiValue)
            && Alike(turned.SlopeY.SiStandardUncertainty, here.SlopeX.SiStandardUncertainty)
            && Near(turned.HeightSpread.SiValue, here.HeightSpread.SiValue)).ToProperty();
    }

    [Property]
    public Property HeightsScaleWithTheirUncertainty(BedCase bed)
    {
        PlaneFit one = PlaneFit.Fit(bed.Scattered());
        PlaneFit four = PlaneFit.Fit(BedCase.Map(bed.Scattered(), p => (p.XMeters, p.YMeters, 4 * p.ZMeters)));
        return (Near(four.SlopeX.SiValue, 4 * one.SlopeX.SiValue)
            && Alike(four.SlopeX.SiStandardUncertainty, 4 * one.SlopeX.SiStandardUncertainty)
            && Near(four.RawFlatness.Meters, 4 * one.RawFlatness.Meters)).ToProperty();
    }

    [Property]
    public Property TheOrderOfThePointsDoesNotMatter(BedCase bed)
    {
        List<ProbePoint> points = bed.Scattered();
        PlaneFit here = PlaneFit.Fit(points);
        points.Reverse();
        PlaneFit there = PlaneFit.Fit(points);
        return (Near(here.SlopeX.SiValue, there.SlopeX.SiValue)
            && Near(here.HeightAt(Mm(10), Mm(20)).SiValue, there.HeightAt(Mm(10), Mm(20)).SiValue)
            && Alike(here.SlopeX.SiStandardUncertainty, there.SlopeX.SiStandardUncertainty)).ToProperty();
    }

    [Property]
    public Property CoefficientsAndHeightAtTellTheSameUncertainty(BedCase bed)
    {
        PlaneFit plane = PlaneFit.Fit(bed.Scattered());
        JointEstimate c = plane.Coefficients;
        double[] v = [1, .123, -.045];
        double variance = 0;
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
            {
                variance += v[i] * v[j] * c.Covariance(i, j);
            }
        }

        double u = plane.HeightAt(Mm(123), Mm(-45)).SiStandardUncertainty;
        return (Math.Abs((u * u) - variance) < 1e-10 * u * u).ToProperty(); // cancellation between terms of both signs
    }

    private static bool Near(double actual, double expected, double scale = 1) => Math.Abs(actual - expected) < Rounding * scale;

    private static bool Alike(double one, double other) => Math.Abs(one - other) <= 1e-9 * Math.Max(one, other); // residuals of 1e-2 of the height: 1e-12/1e-3
}
