#:project ../../src/PrinterMath.Tension/PrinterMath.Tension.csproj
#:property TargetFramework=net10.0

// Exercise: how tight is a belt, how well is that known, how tight must it be, and what is to be turned. See README.md beside this file.
//
//     dotnet run examples/labs/tension.cs -- --student 17
//
// Your part is the next two classes; what follows them is the checker, which knows the answers from the library.
using System.Globalization;
using PrinterMath.Measurement;
using PrinterMath.Tension;
using UnitsNet;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
return Exercise.Run(args);

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

    /// <summary>Invented readings. The numbers are drawn by SplitMix64 (G. L. Steele, D. Lea, C. H. Flood 2014, Fast splittable pseudorandom number generators; from memory).</summary>
    public static Sheet Invented(int student)
    {
        ulong state = (ulong)student;
        double Draw(double lowest, double step, int count)
        {
            state += 0x9E3779B97F4A7C15;
            ulong z = (state ^ (state >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return Math.Round(lowest + (step * ((z ^ (z >> 31)) % (ulong)count)), 4);
        }

        double span = Draw(200, 1, 81), density = Draw(7.8, 0.05, 23), expanded = Draw(0.36, 0.02, 11);
        double mass = Draw(400, 10, 51), acceleration = Draw(8, 1, 8), friction = Draw(1, 0.1, 16);
        double centres = Draw(350, 5, 21), carriage = Draw(40, 2, 11), margin = Draw(62, 2, 15);
        int teeth = (int)Draw(16, 4, 2);
        double turned = Draw(0.25, 0.25, 3);
        double aim = Math.Round(1.15 * ((mass / 1000 * acceleration) + friction), 1);
        double first = aim * Draw(0.6, 0.01, 10), second = aim * Draw(0.8, 0.01, 9);
        double Hertz(double newtons) => Math.Round(Math.Sqrt(newtons / (density / 1000)) / (2 * span / 1000), 1);
        return new Sheet(
            span, 0.5, density, expanded, Hertz(first), Draw(0.4, 0.05, 5), turned, Hertz(second), aim,
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

/// <summary>A wrong way that many go, the number it gives, and what to think about.</summary>
sealed record Slip(string Name, double Value, string Hint);

/// <summary>One question: the library's answer, how exactly a hand must meet it, known slips, and what the library says beyond.</summary>
sealed record Step(string Name, string Unit, double Right, double HandTolerance, string Beyond, params Slip[] Slips)
{
    public string Show(double value) => $"{value:G4}{(Unit.Length > 0 ? " " : string.Empty)}{Unit}";

    /// <summary>Null when right, else a hint.</summary>
    public string? Hint(double answer, double tolerance)
    {
        bool Near(double value, double within) => Math.Abs(answer - value) <= within * Math.Abs(value);
        if (!double.IsFinite(answer))
        {
            return "that is not a number; look for a division by zero or the root of a negative number";
        }

        Slip? closest = Slips.Where(slip => Near(slip.Value, Math.Max(tolerance, 1e-3))).MinBy(slip => Math.Abs(answer - slip.Value));
        return Near(Right, tolerance) ? null
            : closest is not null ? closest.Hint
            : $"too {(answer > Right ? "high" : "low")}, and by no slip that is known here; write each unit beside its number";
    }
}

static class Checker
{
    public static Step[] Steps(Sheet s)
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

static class Exercise
{
    private const int WrongSentence = 4;
    private const double CodeTolerance = 1e-6;

    private static readonly string[] HandOut =
    [
        "A span sounds at f = sqrt(T/mu)/(2*L), L being the whole free length between the two places that hold it.",
        "If T goes with a square, the relative uncertainty of what is squared counts twice in that of T.",
        "A certificate that states U with k = 2 states a standard uncertainty of U/2.",
        "While the motor pulls with F, one strand gains F/2 and the other gives up F/2 wherever the carriage is, so T0 > F/2 suffices.",
        "Two readings, before and after a turn, tell what a turn adds; the stiffness of the belt need not be known.",
        "With half a turn of belt round its pulley the motor shaft carries about twice the tension.",
    ];

    public static int Run(string[] args)
    {
        try
        {
            Dictionary<string, double> hand = [];
            Sheet? own = null;
            int student = Student(args);
            bool key = false;
            for (int i = 0; i < args.Length; i += 2)
            {
                string name = args[i], value = i + 1 < args.Length ? args[i + 1] : throw new ArgumentException($"{args[i]} lacks its value.");
                switch (name)
                {
                    case "--student": break;
                    case "--answers": key = value == "key" ? true : throw new ArgumentException("The only answers known are those of the 'key'."); break;
                    case "--set":
                        string[] pair = value.Split('=');
                        own = (own ?? Sheet.Invented(student)).With(pair[0], Number(pair.ElementAtOrDefault(1) ?? string.Empty));
                        break;
                    case "--tension" or "--share" or "--radius" or "--least" or "--turns" or "--wrong": hand[name] = Number(value); break;
                    default: throw new ArgumentException($"'{name}' is not known; README.md lists the arguments.");
                }
            }

            Sheet sheet = own ?? Sheet.Invented(student);
            return key ? Key(student, Checker.Steps(sheet)) : Check(student, own is null, sheet, hand);
        }
        catch (Exception mistake) when (mistake is ArgumentException or IndeterminateException)
        {
            Console.Error.WriteLine(mistake.Message);
            return 2;
        }
    }

    private static int Check(int student, bool invented, Sheet s, Dictionary<string, double> hand)
    {
        Step[] steps = Checker.Steps(s);
        Sheet n = Sheet.Invented(student + 1);
        Step[] next = Checker.Steps(n);
        double?[] byHand = [ByHand.TensionNewtons, ByHand.DensityShare, ByHand.PitchRadiusMillimeters, ByHand.LeastTensionNewtons, ByHand.TurnsLeft];
        string[] arguments = ["--tension", "--share", "--radius", "--least", "--turns"];
        Console.WriteLine($"Belt tension, student {student}: {(invented ? "an invented machine with invented readings" : "your own readings, the rest invented")}");
        Console.WriteLine("On a real machine: power off; a tight belt stores energy; never past the motor maker's load on the shaft.");
        Console.WriteLine("\nYour sheet");
        Array.ForEach(s.Lines(), line => Console.WriteLine($"  {line}"));
        Console.WriteLine("\nHand-out; one of its sentences is wrong");
        for (int i = 0; i < HandOut.Length; i++)
        {
            Console.WriteLine($"  {i + 1}. {HandOut[i]}");
        }

        Console.WriteLine("\nAnswers");
        bool wrong = false;
        double?[] code = Answers(s), codeNext = Answers(n);
        for (int i = 0; i < steps.Length; i++)
        {
            Step step = steps[i];
            double? written = hand.TryGetValue(arguments[i], out double argument) ? argument : byHand[i];
            string? handHint = written is { } h ? step.Hint(h, step.HandTolerance) : null;
            string? codeHint = code[i] is { } c ? step.Hint(c, CodeTolerance) : null;
            if (code[i] is not null && codeHint is null && (codeNext[i] is not { } other || next[i].Hint(other, CodeTolerance) is not null))
            {
                // Both sheets may have pulleys of the same number of teeth, but no other two answers alike.
                codeHint = "right for your sheet, but not for the next student's: use the arguments, not your numbers";
            }

            Console.WriteLine($"  {i + 1}. {step.Name} ({(step.Unit.Length > 0 ? step.Unit : "ratio")})");
            Console.WriteLine($"     by hand: {Line(written, handHint, $"not yet; {arguments[i]}, or class ByHand")}");
            Console.WriteLine($"     in code: {Line(code[i], codeHint, "not yet; class InCode")}");
            if (code[i] is not null && codeHint is null)
            {
                Console.WriteLine($"     beyond:  {step.Beyond}");
            }

            wrong |= handHint is not null || codeHint is not null;
        }

        double? sentence = hand.TryGetValue("--wrong", out double chosen) ? chosen : ByHand.WrongSentence;
        string? sentenceHint = sentence is { } w && w != WrongSentence ? "that one holds; put the carriage at one end of its travel and ask what each sentence says there" : null;
        Console.WriteLine($"  6. the wrong sentence\n     by hand: {Line(sentence, sentenceHint, "not yet; --wrong, or class ByHand")}");
        return wrong || sentenceHint is not null ? 1 : 0;
    }

    private static string Line(double? answer, string? hint, string notYet) => answer is null ? notYet : hint is null ? "right" : $"{answer:G5}: {hint}";

    private static double?[] Answers(Sheet s) =>
    [
        InCode.TensionNewtons(s.Before, s.Span, s.Density),
        InCode.DensityShare(s.Before, s.UHertz, s.Span, s.USpan, s.Density, s.ExpandedDensity),
        InCode.PitchRadiusMillimeters(Sheet.Pitch, s.Teeth),
        InCode.LeastTensionNewtons(s.Mass, s.Acceleration, s.Friction, s.Centres, s.Carriage, Sheet.Pitch * s.Teeth / (2 * Math.PI), s.Lowest, s.Highest),
        InCode.TurnsLeft(s.Before, s.After, s.Turned, s.Aim, s.Span, s.Density),
    ];

    /// <summary>The teacher's key, and the checker checked: every slip must get its own hint, the right answer none, for a whole class.</summary>
    private static int Key(int student, Step[] steps)
    {
        for (int i = 0; i < steps.Length; i++)
        {
            Console.WriteLine($"Step {i + 1}, {steps[i].Name}: {steps[i].Show(steps[i].Right)}");
            Array.ForEach(steps[i].Slips, slip => Console.WriteLine($"  {slip.Name}: {steps[i].Show(slip.Value)}; {steps[i].Hint(slip.Value, steps[i].HandTolerance) ?? "PASSES AS RIGHT"}"));
        }

        Console.WriteLine($"Step 6, the wrong sentence: {WrongSentence}");
        string[] unclear = [.. Enumerable.Range(1, 99).SelectMany(other => Checker.Steps(Sheet.Invented(other)).SelectMany(step => Unclear(other, step)))];
        Array.ForEach(unclear, Console.WriteLine);
        Console.WriteLine($"Checker, students 1 to 99: {unclear.Length} slips without a hint of their own");
        return unclear.Length == 0 && steps.All(step => step.Hint(step.Right, CodeTolerance) is null) ? 0 : 1;
    }

    private static IEnumerable<string> Unclear(int student, Step step) => step.Slips
        .Where(slip => step.Hint(slip.Value, step.HandTolerance) != slip.Hint)
        .Select(slip => $"student {student}, {step.Name}, {slip.Name}: {step.Show(slip.Value)} beside {step.Show(step.Right)}");

    private static int Student(string[] args)
    {
        int at = Array.IndexOf(args, "--student");
        double number = at < 0 || at + 1 >= args.Length ? throw new ArgumentException("Say which sheet: --student N, N from 1 to 9999.") : Number(args[at + 1]);
        return number is >= 1 and <= 9999 && number == Math.Floor(number) ? (int)number : throw new ArgumentException("--student is a whole number from 1 to 9999.");
    }

    private static double Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value)
            ? value
            : throw new ArgumentException($"'{text}' is not a number; write it like 25.4, with a point.");
}
