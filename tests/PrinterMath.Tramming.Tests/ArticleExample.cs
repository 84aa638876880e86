using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming.Tests;

/// <summary>The code that docs/articles/tramming.md shows, compiled; <see cref="ArticleNumbersTests"/> holds the article's numbers to it. All readings are invented.</summary>
internal sealed class ArticleExample
{
    internal ArticleExample()
    {
        #region plan
        ScrewThread m4 = ScrewThread.IsoCoarse("M4");
        AdjustingScrew Screw(string name, double x, double y) =>
            AdjustingScrew.At(name, Length.FromMillimeters(x), Length.FromMillimeters(y), m4, BedMotion.Lowers);
        var supports = BedSupports.Of(Screw("front left", 0, 0), Screw("front right", 200, 0), Screw("rear", 100, 200));

        ProbePoint[] Grid(params double[] millimeters) =>
            [.. millimeters.Select((z, i) => ProbePoint.At(Length.FromMillimeters(i % 3 * 100), Length.FromMillimeters(i / 3 * 100), Length.FromMillimeters(z)))];
        ProbePoint[] first = Grid(0.020, 0.110, 0.190, 0.100, 0.200, 0.310, 0.210, 0.290, 0.410);

        var probe = new PlaneFitOptions { ProbeRepeatability = Length.FromMicrometers(4) };
        PlaneFit plane = PlaneFit.Fit(first, probe);
        TrammingPlan plan = supports.Plan(plane, new TrammingOptions { KeepStill = "front left" });
        #endregion

        #region sequence
        ProbePoint[] second = Grid(0.014, 0.019, 0.016, 0.010, 0.018, 0.033, 0.030, 0.017, 0.040);
        AppliedTurn[] turned =
        [
            AppliedTurn.Clockwise("front right", Angle.FromDegrees(100)),
            AppliedTurn.Clockwise("rear", Angle.FromDegrees(150)),
        ];
        var sequence = TrammingSequence.Of(
            supports,
            [TrammingPass.First(first), TrammingPass.After(turned, second)],
            new TrammingSequenceOptions
            {
                ProbeRepeatability = Length.FromMicrometers(4),
                Next = new TrammingOptions { KeepStill = "front left" },
            });
        Verdict<Length> verdict = sequence.Judge(Tolerance.AtMost(Length.FromMillimeters(0.05)));
        PassForecast forecast = sequence.Forecast(Length.FromMillimeters(0.05));
        #endregion

        Plane = plane;
        Plan = plan;
        Sequence = sequence;
        Verdict = verdict;
        Forecast = forecast;
    }

    internal PlaneFit Plane { get; }

    internal TrammingPlan Plan { get; }

    internal TrammingSequence Sequence { get; }

    internal Verdict<Length> Verdict { get; }

    internal PassForecast Forecast { get; }
}
