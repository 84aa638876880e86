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

        #region contact
        var search = ContactSearch.Between(
            Length.FromMillimeters(0.5),
            Length.FromMillimeters(-0.5),
            new ContactSearchOptions { AllowedOvershoot = Length.FromMillimeters(0.05), FinestStep = Length.FromMillimeters(0.02) });
        while (search.TryGetNext(out ContactMove? move))
        {
            search = search.With(SheetIsHeld(move.Height) ? ContactOutcome.Touching : ContactOutcome.Clear);
        }

        Measured<Length> sheet = Measured.Of(Length.FromMillimeters(0.100), standardUncertainty: Length.FromMillimeters(0.004));
        ContactReading reading = ContactReading.WithGauge(search.Reading.Clear, search.Reading.Touching, sheet);
        #endregion

        #region zero
        var nozzle = ThermalGrowth.Of(
            Measured.Of(CoefficientOfThermalExpansion.FromPerKelvin(19e-6), CoefficientOfThermalExpansion.FromPerKelvin(1e-6)),
            Measured.Of(Length.FromMillimeters(20), Length.FromMillimeters(1)),
            measuredAt: Measured.Of(Temperature.FromDegreesCelsius(25), TemperatureDelta.FromKelvins(1)),
            printedAt: Measured.Of(Temperature.FromDegreesCelsius(225), TemperatureDelta.FromKelvins(2)));
        HeightZero zero = HeightZero.From(reading.SurfaceHeight, new HeightZeroOptions { NozzleGrowth = nozzle });
        Verdict<Length> gap = zero.JudgeGap(
            axisHeight: Length.FromMillimeters(0.31), Tolerance.Around(Length.FromMillimeters(0.2), Length.FromMillimeters(0.03)));
        #endregion

        #region limits
        var tight = new TrammingOptions { Limits = [TravelLimit.Spring("front left", compression: Length.FromMillimeters(1.1), least: Length.FromMillimeters(1))] };
        TrammingPlan held = supports.Plan(plane, tight);
        TrammingPlan fewest = supports.Plan(plane, new TrammingOptions { LeastTotalTurning = true });
        TrammingPlan posted = BedSupports.Of(
            FixedSupport.At("post", Length.Zero, Length.Zero), Screw("front right", 200, 0), Screw("rear", 100, 200)).Plan(plane);
        #endregion

        #region instrument
        Repeatability repeats = Repeatability.Of(
            [.. new[] { 4, 7, 2, 5, 9, 3, 6, 4, 8, 2 }.Select(micrometers => Length.FromMicrometers(micrometers))]);
        int readings = repeats.ReadingsFor(Length.FromMicrometers(0.8));
        Measured<Length> Diagonal(double millimeters) => Measured.Of(Length.FromMillimeters(millimeters), Length.FromMillimeters(0.05));
        Squareness corner = Squareness.FromDiagonals(diagonalAlongBoth: Diagonal(141.60), diagonalAcross: Diagonal(141.24));
        Verdict<Angle> square = corner.Judge(Tolerance.Around(Angle.Zero, Angle.FromDegrees(0.2)));
        #endregion

        Reading = reading;
        Zero = zero;
        Gap = gap;
        Held = held;
        Fewest = fewest;
        Posted = posted;
        Repeats = repeats;
        ReadingsNeeded = readings;
        Corner = corner;
        Square = square;
        Plane = plane;
        Plan = plan;
        Sequence = sequence;
        Verdict = verdict;
        Forecast = forecast;
    }

    internal ContactReading Reading { get; }

    internal HeightZero Zero { get; }

    internal Verdict<Length> Gap { get; }

    internal TrammingPlan Held { get; }

    internal TrammingPlan Fewest { get; }

    internal TrammingPlan Posted { get; }

    internal Repeatability Repeats { get; }

    internal int ReadingsNeeded { get; }

    internal Squareness Corner { get; }

    internal Verdict<Angle> Square { get; }

    internal PlaneFit Plane { get; }

    internal TrammingPlan Plan { get; }

    internal TrammingSequence Sequence { get; }

    internal Verdict<Length> Verdict { get; }

    internal PassForecast Forecast { get; }

    /// <summary>What the hand feels: the invented sheet is held below 0.127 mm.</summary>
    private static bool SheetIsHeld(Length height) => height.Millimeters < 0.127;
}
