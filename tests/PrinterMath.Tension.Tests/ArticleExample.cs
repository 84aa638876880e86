using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>The code that docs/articles/tension.md shows, compiled; <see cref="ArticleNumbersTests"/> holds the article's numbers to it. All readings are invented.</summary>
internal sealed class ArticleExample
{
    internal ArticleExample()
    {
        #region span
        Measured<LinearDensity> density = LinearDensityOf.Sample(
            Measured.FromResolution(Mass.FromGrams(8.41), Mass.FromGrams(0.01)),
            Measured.Of(Length.FromMillimeters(1000), Length.FromMillimeters(0.5)));
        Measured<Length> free = Measured.Of(Length.FromMillimeters(250), Length.FromMillimeters(0.5));
        var span = new BeltSpan(free, density);
        Measured<Frequency> heard = Measured.Of(Frequency.FromHertz(72.0), Frequency.FromHertz(0.3));
        UncertaintyBudget<Force> tension = span.TensionFor(heard).Budget;
        #endregion

        #region strip
        UncertaintyBudget<FlexuralRigidity> rigidity = FlexuralRigidityOf.OverhangingStrip(
            density,
            overhang: Measured.Of(Length.FromMillimeters(100), Length.FromMillimeters(0.5)),
            teethUp: Measured.Of(Length.FromMillimeters(46), Length.FromMillimeters(1)),
            teethDown: Measured.Of(Length.FromMillimeters(41), Length.FromMillimeters(1)));
        #endregion

        #region layout
        CrossedLayout layout = CrossedLayout.From(new CrossedDimensions
        {
            BeamLength = Length.FromMillimeters(360),
            Depth = Length.FromMillimeters(400),
            CarriageLength = Length.FromMillimeters(60),
            PulleyRadius = BeltPulley.PitchRadius(Length.FromMillimeters(2), teeth: 20),
            Travel = new HeadTravel(HeadPosition.FromMillimeters(60, 60), HeadPosition.FromMillimeters(300, 340)),
        });
        var drive = BeltDrive.Crossed(layout, new BeltDriveOptions
        {
            MassX = Measured.Of(Mass.FromGrams(350), Mass.FromGrams(10)),
            MassY = Measured.Of(Mass.FromGrams(850), Mass.FromGrams(20)),
            Friction = Measured.Of(Force.FromNewtons(1.5), Force.FromNewtons(0.3)),
            ShaftLoad = Measured.Exact(Force.FromNewtons(60)),
        });
        #endregion

        #region window
        TensionWindow window = drive.TensionWindow(span, new TensionWindowOptions { Acceleration = Acceleration.FromMetersPerSecondSquared(20) });
        Verdict<Force> verdict = window.Judge(tension);
        #endregion

        #region pair
        Measured<Frequency> heardB = Measured.Of(Frequency.FromHertz(75.1), Frequency.FromHertz(0.3));
        BeltComparison pair = BeltComparison.Of(
            new HeardSpan("A", span, heard), new HeardSpan("B", span, heardB), new BeltComparisonOptions { LargestRelativeDifference = 0.05 });
        #endregion

        #region turn
        var screw = Tensioner.FromStiffness(
            lead: Measured.Exact(Length.FromMillimeters(0.5)),
            strands: 1,
            beltLength: Measured.Exact(layout.BeltA.TotalLength(layout.Travel.Middle)),
            beltWidth: Length.FromMillimeters(6));
        TensionerTurn first = screw.Toward(window.Recommended.Value, tension.Result);

        Measured<Frequency> after = Measured.Of(Frequency.FromHertz(78.6), Frequency.FromHertz(0.3));
        var learned = Tensioner.FromReadings(span, heard, after, Measured.Of(0.5, 0.02));
        TensionerTurn second = learned.Toward(window.Recommended.Value, span.TensionFor(after).Value);
        #endregion

        #region motor
        var motor = new StepperMotor(new StepperMotorData
        {
            HoldingTorque = Measured.Of(Torque.FromNewtonMeters(0.42), Torque.FromNewtonMeters(0.02)),
            RatedCurrent = WindingCurrent.FromRms(ElectricCurrent.FromAmperes(1.5)),
            Resistance = Measured.Of(ElectricResistance.FromOhms(1.6), ElectricResistance.FromOhms(0.1)),
            Inductance = Measured.Of(ElectricInductance.FromMillihenries(2.8), ElectricInductance.FromMillihenries(0.3)),
            SupplyVoltage = ElectricPotential.FromVolts(24),
            RotorInertia = Measured.Of(MassMomentOfInertia.FromKilogramSquareMeters(5.4e-6), MassMomentOfInertia.FromKilogramSquareMeters(0.5e-6)),
        });
        var speed = Speed.FromMillimetersPerSecond(200);
        var tight = new MotorMarginOptions { Tension = window.Recommended };
        MotorMargin margin = drive.MotorMargin(motor, speed, Acceleration.FromMetersPerSecondSquared(20), tight);
        AccelerationLimit largest = drive.LargestAcceleration(motor, speed, tight);
        TensionOptimum best = drive.BestTension(motor, speed);
        AccelerationLimit before = drive.AccelerationServedBy(tension);
        AccelerationLimit served = drive.AccelerationServedBy(window.Recommended);
        #endregion

        #region axes
        var axes = new AxisOptions { MotorTorque = motor.TorqueAtRunCurrent };
        AxisResponse middle = drive.AxesAt(layout.Travel.Middle, axes);
        FrequencyRange expected = drive.FrequencyOverTravel(axes);
        #endregion

        (Density, Span, Tension, Layout, Drive, Window, Verdict, Pair) = (density, span, tension, layout, drive, window, verdict, pair);
        (Screw, First, Learned, Second, After) = (screw, first, learned, second, span.TensionFor(after).Value);
        (Motor, Margin, Largest, Best, Middle, Expected) = (motor, margin, largest, best, middle, expected);
        (Before, Served, Rigidity) = (before, served, rigidity);
        Tabled = new BeltSpan(free, LinearDensityOf.TypicalTwoMillimeterPitch(Length.FromMillimeters(6))).TensionFor(heard).Budget;
        Pinned = new BeltSpan(free, density, new BeltSpanOptions { Ends = SpanEnds.Pinned }).TensionFor(heard).Value;
        Clamped = new BeltSpan(free, density, new BeltSpanOptions { Ends = SpanEnds.Clamped }).TensionFor(heard).Value;
    }

    internal Measured<LinearDensity> Density { get; }

    internal BeltSpan Span { get; }

    internal UncertaintyBudget<FlexuralRigidity> Rigidity { get; }

    internal UncertaintyBudget<Force> Tension { get; }

    internal UncertaintyBudget<Force> Tabled { get; }

    internal Measured<Force> Pinned { get; }

    internal Measured<Force> Clamped { get; }

    internal CrossedLayout Layout { get; }

    internal BeltDrive Drive { get; }

    internal TensionWindow Window { get; }

    internal AccelerationLimit Before { get; }

    internal AccelerationLimit Served { get; }

    internal Verdict<Force> Verdict { get; }

    internal BeltComparison Pair { get; }

    internal Tensioner Screw { get; }

    internal TensionerTurn First { get; }

    internal Tensioner Learned { get; }

    internal TensionerTurn Second { get; }

    internal Measured<Force> After { get; }

    internal StepperMotor Motor { get; }

    internal MotorMargin Margin { get; }

    internal AccelerationLimit Largest { get; }

    internal TensionOptimum Best { get; }

    internal AxisResponse Middle { get; }

    internal FrequencyRange Expected { get; }
}
