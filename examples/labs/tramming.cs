#:project checking/LabChecking.csproj
#:project ../../src/PrinterMath.Tramming/PrinterMath.Tramming.csproj
#:property TargetFramework=net10.0

// Exercise: how does a bed lie, how well is that known, which screw is to be turned and how far, what did the turn really do, and where is height zero? See README.md beside this file.
//
//     dotnet run examples/labs/tramming.cs -- --student 17
//
// Your part is the next two classes; what follows them is the checker, which knows the answers from the library.
using LabChecking;
using PrinterMath.Measurement;
using PrinterMath.Tramming;
using UnitsNet;

return new Exercise<Sheet>
{
    Title = "Tramming a bed",
    Caution = "On a real machine: never drive the nozzle into the bed or turn a screw in contact; a hot bed and a hot nozzle burn; keep fingers out of the gap that closes.",
    Invented = Sheet.Invented,
    With = (sheet, name, value) => sheet.With(name, value),
    Lines = sheet => sheet.Lines(),
    Questions = Checker.Questions,
    ByHand =
    [
        ("--slope", ByHand.SlopeMicrometersPerMillimeter), ("--turns", ByHand.TurnsToRaise), ("--u-turns", ByHand.UncertaintyOfTurns),
        ("--lead", ByHand.LeadMillimeters), ("--zero", ByHand.HeightZeroMillimeters),
    ],
    InCode = s =>
    [
        InCode.SlopeMicrometersPerMillimeter(s.First, s.Pitch),
        InCode.TurnsToRaise(s.First, s.Lead),
        InCode.UncertaintyOfTurns(s.Repeatability, s.Lead),
        InCode.LeadMillimeters(s.First, s.Second, s.Degrees),
        InCode.HeightZeroMillimeters(s.Clear, s.Touching, s.Gauge, s.Expansion, s.NozzleLength, s.BedLength, s.Cold, s.NozzleHot, s.BedHot),
    ],
    HandOut =
    [
        "Over a square grid, the slope of the plane along x is the mean of the last column less that of the first, divided by their distance.",
        "A bed on three screws can be brought to any plane; with four, one screw is too many and may twist the plate.",
        "If probe readings scatter by s, independently, the mean of n of them scatters by s divided by the root of n.",
        "A sheet between nozzle and bed lets contact be felt before the nozzle would touch: its thickness is subtracted.",
        "Nozzle and bed grow when they are hot, so the gap between them is larger in printing than it was cold, at the same height of the axis.",
        "Two readings of the bed and the turn between them tell the lead of a screw; its thread need not be known.",
    ],
    WrongSentence = 5,
    WrongByHand = ByHand.WrongSentence,
    WrongHint = "that one holds; draw nozzle and bed, cold and hot, and mark which way each of them grows",
}.Run(args);

/// <summary>First: your numbers by hand, here or as arguments: --slope 0.42 --turns 0.35 --u-turns 0.011 --lead 0.52 --zero 0.14 --wrong 1.</summary>
static class ByHand
{
    public static readonly double? SlopeMicrometersPerMillimeter = null;
    public static readonly double? TurnsToRaise = null;
    public static readonly double? UncertaintyOfTurns = null;
    public static readonly double? LeadMillimeters = null;
    public static readonly double? HeightZeroMillimeters = null;

    /// <summary>Number of the sentence of the hand-out that is wrong.</summary>
    public static readonly double? WrongSentence = null;
}

/// <summary>Then: the formulas. Heights come in micrometres, row by row from the front, each row from the left; lengths in millimetres. Put your formula in the place of null.</summary>
static class InCode
{
    /// <summary>Slope of the plane along x, positive where the bed rises to the right.</summary>
    public static double? SlopeMicrometersPerMillimeter(double[] heights, double pitch) => null;

    /// <summary>Turns of the screw under the right front corner that bring its corner of the plane as high as the left front one, positive if they raise.</summary>
    public static double? TurnsToRaise(double[] heights, double lead) => null;

    /// <summary>Standard uncertainty of those turns that the probe's repeatability makes; the lead taken as exact, the bed as flat.</summary>
    public static double? UncertaintyOfTurns(double repeatabilityMicrometers, double lead) => null;

    /// <summary>How far one turn really moved the bed at that screw, against the left front corner, from two probings and the turn between them, positive where it raised.</summary>
    public static double? LeadMillimeters(double[] first, double[] second, double degrees) => null;

    /// <summary>Height of the axis at which the nozzle touches the bed in printing. Contact lies in the middle between clear and touching; one coefficient of expansion, in 10⁻⁶/K, serves both parts.</summary>
    public static double? HeightZeroMillimeters(
        double clear, double touching, double gauge, double expansion, double nozzleLength, double bedLength, double cold, double nozzleHot, double bedHot) => null;
}

/// <summary>What is read on one machine, in the units that a person reads.</summary>
sealed record Sheet(
    double Pitch, double Repeatability, string Thread, double[] First, double Degrees, double[] Second,
    double Clear, double Touching, double Gauge, double Expansion, double NozzleLength, double BedLength, double Cold, double NozzleHot, double BedHot)
{
    public double Lead => Thread == "M3" ? 0.5 : 0.7;

    /// <summary>Invented readings.</summary>
    public static Sheet Invented(int student)
    {
        var draws = new Draws(student);
        double pitch = draws.Next(70, 5, 9), repeatability = draws.Next(3, 0.5, 9);
        string thread = draws.Next(0, 1, 2) == 0 ? "M3" : "M4";
        double lead = thread == "M3" ? 0.5 : 0.7;
        double rise = draws.Next(120, 10, 15), depth = draws.Next(-100, 10, 21), bow = draws.Next(-20, 5, 9), corner = draws.Next(20, 2, 8);
        double Height(int i, double right, double back) =>
            Math.Round((right * (i % 3) / 2) + (back * (i / 3) / 2) + (i == 4 ? bow : 0) + (i == 2 ? corner : 0) + draws.Next(-2, 1, 5));
        double[] first = [.. Enumerable.Range(0, 9).Select(i => Height(i, rise, depth))];
        double turned = -Math.Round(rise / 1000 / lead * 360 / 15) * 15;
        double left = rise + (turned / 360 * lead * 1000 * draws.Next(0.86, 0.02, 10));
        double[] second = [.. Enumerable.Range(0, 9).Select(i => Height(i, left, depth))];
        double touching = draws.Next(0.12, 0.01, 15), gauge = draws.Next(0.08, 0.01, 5);
        return new Sheet(
            pitch, repeatability, thread, first, turned, second, Math.Round(touching + draws.Next(0.02, 0.01, 3), 4), touching, gauge,
            draws.Next(17, 1, 7), draws.Next(20, 1, 16), draws.Next(30, 1, 21), draws.Next(18, 1, 7), draws.Next(195, 5, 12), draws.Next(50, 5, 9));
    }

    public string[] Lines() =>
    [
        $"grid                  3 x 3 places, {Pitch} mm apart along x and y, the first left in front",
        $"probe                 repeats within {Repeatability} um (standard deviation of one reading)",
        $"first probing, um     front {Row(First, 0)}",
        $"                      middle {Row(First, 1)}",
        $"                      back {Row(First, 2)}",
        $"screws                under the left front, the right front and the middle back place, thread {Thread}, lead {Lead} mm",
        $"then turned           right front by {Math.Abs(Degrees)} degrees, {(Degrees < 0 ? "lowering" : "raising")}; no other screw",
        $"second probing, um    front {Row(Second, 0)}",
        $"                      middle {Row(Second, 1)}",
        $"                      back {Row(Second, 2)}",
        $"contact               a sheet of {Gauge} mm is clear at {Clear} mm of the axis and held at {Touching} mm",
        $"warming up            from {Cold} degrees C to {NozzleHot} (nozzle) and {BedHot} (bed)",
        $"what grows            {NozzleLength} mm of nozzle and mount downwards, {BedLength} mm under the bed upwards, {Expansion}e-6 per K both",
    ];

    /// <summary>A reading of your own machine in the place of an invented one.</summary>
    public Sheet With(string name, double value) => name switch
    {
        "pitch" => this with { Pitch = value },
        "repeatability" => this with { Repeatability = value },
        "degrees" => this with { Degrees = value },
        "clear" => this with { Clear = value },
        "touching" => this with { Touching = value },
        "gauge" => this with { Gauge = value },
        "expansion" => this with { Expansion = value },
        "nozzle-length" => this with { NozzleLength = value },
        "bed-length" => this with { BedLength = value },
        "cold" => this with { Cold = value },
        "nozzle-hot" => this with { NozzleHot = value },
        "bed-hot" => this with { BedHot = value },
        _ when Place(name, "first-") is { } i => this with { First = Put(First, i, value) },
        _ when Place(name, "second-") is { } i => this with { Second = Put(Second, i, value) },
        _ => throw new ArgumentException($"There is no reading called '{name}'; README.md lists them."),
    };

    private static string Row(double[] heights, int row) => string.Join(", ", heights.Skip(3 * row).Take(3));

    private static int? Place(string name, string start) =>
        name.StartsWith(start, StringComparison.Ordinal) && int.TryParse(name[start.Length..], out int place) && place is >= 1 and <= 9 ? place - 1 : null;

    private static double[] Put(double[] heights, int place, double value) => [.. heights.Select((height, i) => i == place ? value : height)];
}

static class Checker
{
    public static Question[] Questions(Sheet s)
    {
        var exact = new PlaneFitOptions { ProbeRepeatability = Length.FromMicrometers(s.Repeatability), WidenForMisfit = false };
        ProbePoint[] points = Points(s, s.First), again = Points(s, s.Second);
        PlaneFit plane = PlaneFit.Fit(points, exact), then = PlaneFit.Fit(again, exact);
        BedSupports supports = BedSupports.Of(Screw(s, "left front", 0, 0), Screw(s, "right front", 2, 0), Screw(s, "middle back", 1, 2));
        ScrewTurn turn = supports.Plan(plane, new TrammingOptions { KeepStill = "left front" }).Turns[1];
        double turns = turn.Turns.SiValue * Math.Sign(turn.HeightChange.SiValue);
        double u = turn.HeightChange.SiStandardUncertainty * 1e3 / s.Lead;

        double across = 2 * s.Pitch;
        double slope = plane.SlopeX.SiValue * 1e3, slopeThen = then.SlopeX.SiValue * 1e3;
        double lead = (slopeThen - slope) * across / 1e3 / (s.Degrees / 360);
        AppliedTurn made = s.Degrees < 0 ? AppliedTurn.Counterclockwise("right front", Angle.FromDegrees(-s.Degrees)) : AppliedTurn.Clockwise("right front", Angle.FromDegrees(s.Degrees));
        TrammingSequence sequence = TrammingSequence.Of(
            supports,
            [TrammingPass.First(points), TrammingPass.After([made], again)],
            new TrammingSequenceOptions { ProbeRepeatability = Length.FromMicrometers(s.Repeatability) });

        double contact = (s.Clear + s.Touching) / 2;
        double nozzle = s.Expansion * 1e-6 * s.NozzleLength * (s.NozzleHot - s.Cold), bed = s.Expansion * 1e-6 * s.BedLength * (s.BedHot - s.Cold);
        ContactReading reading = ContactReading.WithGauge(Millimeters(s.Clear), Millimeters(s.Touching), Measured.Exact(Millimeters(s.Gauge)));
        HeightZero zero = HeightZero.From(reading.SurfaceHeight, new HeightZeroOptions { NozzleGrowth = Growth(s, s.NozzleLength, s.NozzleHot), BedGrowth = Growth(s, s.BedLength, s.BedHot) });
        double right = zero.Height.Value.Millimeters;

        double corner = s.First[2] - s.First[0];
        return
        [
            new("slope along x", "um/mm", slope, 0.01, $"the library, which doubts a bed that is no plane, says {PlaneFit.Fit(points).TiltAboutY} about y",
                new("divided by the pitch of the grid", 2 * slope, "from the first to the last column it is twice the pitch of the grid"),
                new("sign turned round", -slope, "the sign: positive where the bed rises to the right, last column less first"),
                new("column sums for means", 3 * slope, "take the mean of each column, not its sum"),
                new("slope along y", plane.SlopeY.SiValue * 1e3, "that is the slope along y: rows run from left to right, columns from front to back"),
                new("mm for um", slope / 1000, "a factor of 1000: heights are in micrometres, asked for are micrometres for each millimetre"),
                new("front row alone", corner / across, "that is the front row alone: every column has three readings, and all nine belong to the plane")),
            new("turns to raise the right front", "turns", turns, 0.01, $"the library: {turn}",
                new("sign turned round", -turns, "the sign: a corner that stands high has to go down, which counts negative"),
                new("degrees for turns", turns * 360, "a factor of 360: asked for are turns"),
                new("um for mm", turns * 1000, "a factor of 1000: the lead is in millimetres, the heights are in micrometres"),
                new("half of the distance", turns / 2, "half of it: the corners lie two pitches of the grid apart"),
                new("diameter for lead", turns * s.Lead / (s.Thread == "M3" ? 3 : 4), "you divided by the diameter of the screw; a turn moves it by its lead"),
                new("corners alone", -corner / 1000 / s.Lead, "that is from two readings alone, and their scatter goes into it whole; use the plane")),
            new("u of those turns", "turns", u, 0.02, $"with the shape of the bed in it, the library says {supports.Plan(PlaneFit.Fit(points), new TrammingOptions { KeepStill = "left front" }).Turns[1].Turns}",
                new("one reading", s.Repeatability / 1000 / s.Lead, "that is for one reading; here it is the difference of two means of three"),
                new("difference of two readings", Math.Sqrt(2) * s.Repeatability / 1000 / s.Lead, "that is for the difference of two readings; each column has three"),
                new("mean of nine", s.Repeatability / 3 / 1000 / s.Lead, "that is for the mean of nine readings; the slope is the difference of two means of three"),
                new("mean of three", s.Repeatability / Math.Sqrt(3) / 1000 / s.Lead, "that is for the mean of one column; the difference of two has twice its variance"),
                new("not divided by the lead", u * s.Lead, "that is a height in millimetres: divide it by the lead"),
                new("um for mm", u * 1000, "a factor of 1000: the lead is in millimetres, the scatter in micrometres")),
            new("lead by the two probings", "mm", lead, 0.02, $"the library weighs that against the thread and against a hand that sets a turn to 3 degrees: {sequence.Responses[1]}",
                new("sign turned round", -lead, "the sign: it was lowered, and it went down"),
                new("for each degree", lead / 360, "that is for each degree: one turn is 360 of them"),
                new("for the whole turn made", lead * Math.Abs(s.Degrees) / 360, "that is what the turn did as made: divide by the part of a turn that it was"),
                new("um for mm", lead * 1000, "a factor of 1000: asked for in millimetres"),
                new("second probing alone", slopeThen * across / 1e3 / (s.Degrees / 360), "that is the height left after the turn; what the turn did is the difference of both probings")),
            new("height zero", "mm", right, 0.01, $"the library, with its uncertainty: {zero}, most of it from the {zero.Budget.Largest.Input.Name}",
                new("growth the other way", contact - s.Gauge - nozzle - bed, "the growth: hot, the nozzle touches while the axis is still higher, so it adds"),
                new("no growth", contact - s.Gauge, "nozzle and bed grow on the way to printing; that is missing"),
                new("gauge added", contact + s.Gauge + nozzle + bed, "the gauge: contact was felt too early by its thickness, so it is subtracted"),
                new("gauge forgotten", contact + nozzle + bed, "the gauge lies between nozzle and bed; its thickness is subtracted"),
                new("height of touching", s.Touching - s.Gauge + nozzle + bed, "contact lies somewhere between clear and touching; take the middle"),
                new("height of clear", s.Clear - s.Gauge + nozzle + bed, "contact lies somewhere between clear and touching; take the middle"),
                new("bed as hot as the nozzle", contact - s.Gauge + nozzle + (bed * (s.NozzleHot - s.Cold) / (s.BedHot - s.Cold)), "nozzle and bed are not equally hot"),
                new("temperatures without the cold", contact - s.Gauge + (nozzle * s.NozzleHot / (s.NozzleHot - s.Cold)) + (bed * s.BedHot / (s.BedHot - s.Cold)), "parts grow by the difference between hot and cold, not from 0 degrees")),
        ];
    }

    private static ProbePoint[] Points(Sheet s, double[] heights) =>
        [.. heights.Select((z, i) => ProbePoint.At(Millimeters(i % 3 * s.Pitch), Millimeters(i / 3 * s.Pitch), Length.FromMicrometers(z)))];

    private static AdjustingScrew Screw(Sheet s, string name, int column, int row) =>
        AdjustingScrew.At(name, Millimeters(column * s.Pitch), Millimeters(row * s.Pitch), ScrewThread.IsoCoarse(s.Thread), BedMotion.Raises);

    private static ThermalGrowth Growth(Sheet s, double length, double hot) => ThermalGrowth.Of(
        Measured.Exact(CoefficientOfThermalExpansion.FromPerKelvin(s.Expansion * 1e-6)), Measured.Exact(Millimeters(length)), Celsius(s.Cold), Celsius(hot));

    private static MeasuredTemperature Celsius(double degrees) => MeasuredTemperature.FromKelvins(degrees + 273.15, 0);

    private static Length Millimeters(double value) => Length.FromMillimeters(value);
}
