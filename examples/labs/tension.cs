#:project checking/LabChecking.csproj
#:project ../../src/PrinterMath.Tension/PrinterMath.Tension.csproj
#:property TargetFramework=net10.0

// Exercise: how tight is a belt, how well is that known, how tight must it be, and what is to be turned. See README.md beside this file.
//
//     dotnet run examples/labs/tension.cs -- --student 17
//
// Your part is the next two classes; what follows them is the checker, which knows the answers from the library.
using LabChecking;
using PrinterMath.Measurement;
using PrinterMath.Tension;
using UnitsNet;

return new Exercise<Sheet>
{
    Title = "Belt tension",
    Caution = "On a real machine: power off; a tight belt stores energy; never past the motor maker's load on the shaft.",
    Invented = Sheet.Invented,
    With = (sheet, name, value) => sheet.With(name, value),
    Lines = sheet => sheet.Lines(),
    Questions = Checker.Questions,
    ByHand =
    [
        ("--tension", ByHand.TensionNewtons), ("--share", ByHand.DensityShare), ("--radius", ByHand.PitchRadiusMillimeters),
        ("--least", ByHand.LeastTensionNewtons), ("--turns", ByHand.TurnsLeft),
    ],
    InCode = s =>
    [
        InCode.TensionNewtons(s.Before, s.Span, s.Density),
        InCode.DensityShare(s.Before, s.UHertz, s.Span, s.USpan, s.Density, s.ExpandedDensity),
        InCode.PitchRadiusMillimeters(Sheet.Pitch, s.Teeth),
        InCode.LeastTensionNewtons(s.Mass, s.Acceleration, s.Friction, s.Centres, s.Carriage, Sheet.Pitch * s.Teeth / (2 * Math.PI), s.Lowest, s.Highest),
        InCode.TurnsLeft(s.Before, s.After, s.Turned, s.Aim, s.Span, s.Density),
    ],
    HandOut =
    [
        "A span sounds at f = sqrt(T/mu)/(2*L), L being the whole free length between the two places that hold it.",
        "If T goes with a square, the relative uncertainty of what is squared counts twice in that of T.",
        "A certificate that states U with k = 2 states a standard uncertainty of U/2.",
        "While the motor pulls with F, one strand gains F/2 and the other gives up F/2 wherever the carriage is, so T0 > F/2 suffices.",
        "Two readings, before and after a turn, tell what a turn adds; the stiffness of the belt need not be known.",
        "With half a turn of belt round its pulley the motor shaft carries about twice the tension.",
    ],
    WrongSentence = 4,
    WrongByHand = ByHand.WrongSentence,
    WrongHint = "that one holds; put the carriage at one end of its travel and ask what each sentence says there",
}.Run(args);

/// <summary>First: your numbers by hand, here or as arguments: --tension 25.4 --share 0.62 --radius 5.1 --least 11.8 --turns 0.33 --wrong 1.</summary>
static class ByHand
{
    public static readonly double? TensionNewtons = null;
    public static readonly double? DensityShare = null;
    public static readonly double? PitchRadiusMillimeters = null;
    public static readonly double? LeastTensionNewtons = null;
    public static readonly double? TurnsLeft = null;

    /// <summary>Number of the sentence of the hand-out that is wrong.</summary>
    public static readonly double? WrongSentence = null;
}

/// <summary>Then: the formulas. Arguments come in the units of the sheet, results go out in the units of the name. Put your formula in the place of null.</summary>
static class InCode
{
    public static double? TensionNewtons(double hertz, double spanMillimeters, double gramsPerMeter) => null;

    /// <summary>Share of the variance of the tension that comes from the linear density, 0 to 1; its certificate states an expanded uncertainty, k = 2.</summary>
    public static double? DensityShare(
        double hertz, double uHertz, double spanMillimeters, double uSpanMillimeters, double gramsPerMeter, double expandedGramsPerMeter) => null;

    public static double? PitchRadiusMillimeters(double pitchMillimeters, int teeth) => null;

    /// <summary>Least tension at rest with which the slack strand keeps some tension, wherever the carriage is.</summary>
    public static double? LeastTensionNewtons(
        double massGrams, double acceleration, double frictionNewtons,
        double centreDistance, double carriageLength, double pitchRadius, double lowestX, double highestX) => null;

    /// <summary>Turns that are left after the second reading.</summary>
    public static double? TurnsLeft(
        double hertzBefore, double hertzAfter, double turned, double aimNewtons, double spanMillimeters, double gramsPerMeter) => null;
}

/// <summary>What is read on one machine, in the units that a person reads.</summary>
sealed record Sheet(
    double Span, double USpan, double Density, double ExpandedDensity, double Before, double UHertz, double Turned, double After, double Aim,
    double Mass, double Acceleration, double Friction, double Centres, double Carriage, int Teeth, double Lowest, double Highest, double ShaftLoad)
{
    public const double Pitch = 2;

    /// <summary>Invented readings.</summary>
    public static Sheet Invented(int student)
    {
        var draws = new Draws(student);
        double span = draws.Next(200, 1, 81), density = draws.Next(7.8, 0.05, 23), expanded = draws.Next(0.36, 0.02, 11);
        double mass = draws.Next(400, 10, 51), acceleration = draws.Next(8, 1, 8), friction = draws.Next(1, 0.1, 16);
        double centres = draws.Next(350, 5, 21), carriage = draws.Next(40, 2, 11), margin = draws.Next(62, 2, 15);
        int teeth = (int)draws.Next(16, 4, 2);
        double turned = draws.Next(0.25, 0.25, 3);
        double aim = Math.Round(1.15 * ((mass / 1000 * acceleration) + friction), 1);
        double first = aim * draws.Next(0.6, 0.01, 10), second = aim * draws.Next(0.8, 0.01, 9);
        double Hertz(double newtons) => Math.Round(Math.Sqrt(newtons / (density / 1000)) / (2 * span / 1000), 1);
        return new Sheet(
            span, 0.5, density, expanded, Hertz(first), draws.Next(0.4, 0.05, 5), turned, Hertz(second), aim,
            mass, acceleration, friction, centres, carriage, teeth, margin, centres - margin, 60);
    }

    public string[] Lines() =>
    [
        $"span plucked          {Span} mm, u = {USpan} mm (the free length between the places that hold it)",
        $"linear density        {Density} g/m, certificate: U = {ExpandedDensity} g/m, k = 2",
        $"frequency             {Before} Hz, u = {UHertz} Hz",
        $"then tightened by     {Turned} turns; the same span now sounds at {After} Hz",
        $"tension to aim at     {Aim} N",
        $"carriage              {Mass} g, largest acceleration {Acceleration} m/s2, friction {Friction} N",
        $"axis                  motor shaft at x = 0, idler at x = {Centres} mm, both pulleys of {Teeth} teeth of {Pitch} mm",
        $"carriage              belt ends {Carriage} mm apart, its middle between x = {Lowest} and {Highest} mm, on the upper strand",
        $"motor's maker         radial load on the shaft at most {ShaftLoad} N",
    ];

    /// <summary>A reading of your own machine in the place of an invented one.</summary>
    public Sheet With(string name, double value) => name switch
    {
        "span" => this with { Span = value },
        "u-span" => this with { USpan = value },
        "density" => this with { Density = value },
        "density-k2" => this with { ExpandedDensity = value },
        "before" => this with { Before = value },
        "u-hertz" => this with { UHertz = value },
        "turned" => this with { Turned = value },
        "after" => this with { After = value },
        "aim" => this with { Aim = value },
        "mass" => this with { Mass = value },
        "acceleration" => this with { Acceleration = value },
        "friction" => this with { Friction = value },
        "centres" => this with { Centres = value },
        "carriage" => this with { Carriage = value },
        "teeth" => this with { Teeth = (int)value },
        "lowest" => this with { Lowest = value },
        "highest" => this with { Highest = value },
        "shaft-load" => this with { ShaftLoad = value },
        _ => throw new ArgumentException($"There is no reading called '{name}'; README.md lists them."),
    };
}

static class Checker
{
    public static Question[] Questions(Sheet s)
    {
        Measured<Length> length = Measured.Of(Length.FromMillimeters(s.Span), Length.FromMillimeters(s.USpan));
        Measured<LinearDensity> density = Measured.FromCertificate(LinearDensity.FromGramsPerMeter(s.Density), LinearDensity.FromGramsPerMeter(s.ExpandedDensity), 2);
        Measured<Frequency> before = Hertz(s.Before), after = Hertz(s.After);
        Measured<Frequency> Hertz(double value) => Measured.Of(Frequency.FromHertz(value), Frequency.FromHertz(s.UHertz));
        var ideal = new BeltSpan(length, density, new BeltSpanOptions
        {
            Ends = SpanEnds.Pinned, Rigidity = Measured.Exact(FlexuralRigidity.FromNewtonSquareMeters(0)),
        });
        var real = new BeltSpan(length, density);
        UncertaintyBudget<Force> budget = ideal.TensionFor(before).Budget;

        Length radius = BeltPulley.PitchRadius(Length.FromMillimeters(Sheet.Pitch), s.Teeth);
        SingleAxisLayout axis = SingleAxisLayout.From(new SingleAxisDimensions
        {
            CentreDistance = Length.FromMillimeters(s.Centres),
            CarriageLength = Length.FromMillimeters(s.Carriage),
            PulleyRadius = radius,
            Travel = HeadTravel.Along(Length.FromMillimeters(s.Lowest), Length.FromMillimeters(s.Highest)),
        });
        var loads = new BeltDriveOptions
        {
            MassX = Measured.Exact(Mass.FromGrams(s.Mass)),
            Friction = Measured.Exact(Force.FromNewtons(s.Friction)),
            ShaftLoad = Measured.Exact(Force.FromNewtons(s.ShaftLoad)),
        };
        BeltDriveOptions smooth = loads with { BearingFriction = Measured.Exact(0.0), BendingLoss = Measured.Exact(0.0) };
        Acceleration a = Acceleration.FromMetersPerSecondSquared(s.Acceleration);
        double least = BeltDrive.SingleAxis(axis, smooth)
            .TensionWindow(ideal, new TensionWindowOptions { Acceleration = a, SlackSideShare = Measured.Exact(0.0) }).Lower.Result.SiValue;
        TensionWindow window = BeltDrive.SingleAxis(axis, loads).TensionWindow(real, new TensionWindowOptions { Acceleration = a });

        Tensioner screw = Tensioner.FromReadings(ideal, before, after, Measured.Of(s.Turned, 0.02));
        double turns = screw.Toward(Force.FromNewtons(s.Aim), ideal.TensionFor(after).Value).Turns.Result.SiValue;
        TensionerTurn advice = Tensioner.FromReadings(real, before, after, Measured.Of(s.Turned, 0.02)).Toward(Force.FromNewtons(s.Aim), real.TensionFor(after).Value);

        double t = IdealString.Tension(before.Value, length.Value, density.Value).Newtons;
        double share = budget.Lines.Single(line => line.Input.Name == SpanInputs.Density).VarianceShare;
        double rDensity = s.ExpandedDensity / 2 / s.Density, rHertz = 2 * s.UHertz / s.Before, rSpan = 2 * s.USpan / s.Span;
        double force = (s.Mass / 1000 * s.Acceleration) + s.Friction;
        double[] strands = [axis.Belt.FirstStrand(axis.Travel.Lowest).Millimeters, axis.Belt.SecondStrand(axis.Travel.Lowest).Millimeters];
        double both = strands.Sum();
        double other = Math.Max(axis.Belt.FirstStrand(axis.Travel.Highest).Millimeters, axis.Belt.SecondStrand(axis.Travel.Highest).Millimeters) / both;
        double middle = Math.Max(axis.Belt.FirstStrand(axis.Travel.Middle).Millimeters, axis.Belt.SecondStrand(axis.Travel.Middle).Millimeters) / both;
        double q = strands.Max() / both;

        return
        [
            new("tension", "N", t, 0.01, $"the library, which lets the belt be a little stiff and its ends neither pinned nor clamped, says {real.TensionFor(before).Value}",
                new("half the length for the whole", t / 4, "you took half of the free length: the span swings as one arch, and its wave is twice as long as the span"),
                new("twice the length for the whole", t * 4, "you took twice the length where 2*L stands already, or the length of both strands"),
                new("frequency not squared", t / s.Before, "the frequency is squared: four times the tension is needed for twice the frequency"),
                new("g/m for kg/m", t * 1000, "a factor of 1000: the linear density goes in as kg/m"),
                new("mm for m", t * 1e6, "a factor of a million: the length goes in as metres")),
            new("share of the density", string.Empty, share, 0.01, $"with stiffness and ends in the budget, the largest input is the {real.TensionFor(before).Budget.Largest.Input.Name}",
                new("U for u, or no factor 2", Share(4 * rDensity * rDensity, (rHertz * rHertz) + (rSpan * rSpan)), "two slips give this number: taking U for u (k = 2, so u = U/2), or forgetting that frequency and length go in squared, so that their relative u counts twice"),
                new("uncertainties added, not squares", Share(rDensity, rHertz + rSpan), "it is the squares of the uncertainties that add, so a share is one of variance"),
                new("root of the share", Math.Sqrt(share), "that is the share of u; asked for is the share of the variance, u squared"),
                new("per cent for a ratio", share * 100, "give the share as a ratio from 0 to 1")),
            new("pitch radius", "mm", radius.Millimeters, 0.005, "measured over the teeth a pulley is smaller: the pitch line lies in the cords of the belt",
                new("diameter for radius", radius.Millimeters * 2, "that is the diameter"),
                new("circumference for radius", radius.Millimeters * 2 * Math.PI, "that is the circumference: teeth times pitch"),
                new("m for mm", radius.Millimeters / 1000, "a factor of 1000: asked for in mm")),
            new("least tension", "N", least, 0.01, $"with friction that tension causes and 10 to 30 % of F left on the slack side, the library's window is {window.Lower.Result} to {window.Upper.Result} ({window.BindingPlace})",
                new("half of F", force / 2, "F/2 holds only where both strands are equally long; measure them with the carriage at either end of its travel"),
                new("the short strand on top", force * strands.Min() / both, "the wrong strand: short is stiff, so the short strand gives up most when it is the slack one"),
                new("the other end of the travel", force * other, "that is the end of the travel where the strands are more alike; take the other one"),
                new("the middle of the travel", force * middle, "that is the middle of the travel; what serves there is too little at its end"),
                new("the whole of F", force, "nearly: the tight strand takes a part of F too, so the slack one does not lose all of it"),
                new("friction forgotten", (force - s.Friction) * q, "F is m*a plus the friction"),
                new("g for kg", ((s.Mass * s.Acceleration) + s.Friction) * q, "a factor of about 1000: the mass goes in as kilograms")),
            new("turns left", "turns", turns, 0.03, $"the library, with its uncertainty: {advice}",
                new("linear in frequency", s.Turned * (Math.Sqrt(s.Aim / t) * s.Before - s.After) / (s.After - s.Before), "a turn adds tension, not frequency: compare the squares of the frequencies"),
                new("from the first reading", turns + s.Turned, "that is from the first reading on; a part of it is turned already"),
                new("gain of the reading for gain of a turn", turns / s.Turned, "divide what the readings gained by the turns made between them: the gain is one of newtons for each turn"),
                new("sign turned round", -turns, "the sign: more tension is wanted, and tightening counts positive")),
        ];
    }

    private static double Share(double part, double rest) => part / (part + rest);
}
