namespace WorkshopSimulator;

/// <summary>The invented machine, drawn anew for every seed and then read with ruler, scale, phone and probe.</summary>
public static class Workshop
{
    /// <summary>Draws a machine and reads it.</summary>
    /// <param name="seed">Any number; the same number gives the same visit.</param>
    /// <returns>Truth and readings.</returns>
    public static WorkshopVisit Visit(ulong seed)
    {
        var random = new SeededRandom(seed);
        SeededRandom belts = random.Branch();
        SeededRandom sound = random.Branch();
        SeededRandom rulers = random.Branch();
        SeededRandom bed = random.Branch();
        SeededRandom tap = random.Branch();
        SeededRandom prints = random.Branch();
        SeededRandom driving = random.Branch();
        SeededRandom turning = random.Branch();
        SeededRandom touching = random.Branch();

        double density = belts.Between(7.6e-3, 8.8e-3);
        double rigidity = belts.Between(1.2e-5, 2.8e-5);
        double tension = belts.Between(24, 48);
        (BeltTruth a, float[] heardA) = Belt(belts, sound, density, rigidity, tension);
        (BeltTruth b, float[] heardB) = Belt(belts, sound, density, rigidity, tension * (1 + belts.Normal(0, 0.08)));

        double sample = rulers.Between(0.9, 1.1);
        (ContactTruth contact, IReadOnlyList<WarmedPart> parts) = FeltContact.Draw(touching);
        Reading[] readings =
        [
            Read(rulers, "span_a", a.Span.LengthMetres * 1e3, "mm", 0.5, 0.5),
            Read(rulers, "span_b", b.Span.LengthMetres * 1e3, "mm", 0.5, 0.5),
            Read(rulers, "sample_mass", density * sample * 1e3, "g", 0.005, 0.01),
            Read(rulers, "sample_length", sample * 1e3, "mm", 0.7, 1),
            Read(touching, "gauge_thickness", contact.GaugeMillimetres, "mm", 0.003, 0.001),
        ];

        BedTruth surface = Bed(bed);
        HeadTruth head = Head(tap);
        DriveTruth drive = DrivenHead.Draw(driving);
        ExtruderTruth extruder = PrintedPieces.Extruder(prints);
        ProbedHeight[] probed = Probe(bed, surface);
        BedScrew[] screws = Screws(bed);
        IReadOnlyList<ScrewTruth> moves = TurnedBed.Screws(screws, turning);
        IReadOnlyList<MadeTurn> turned = TurnedBed.Turns(probed, screws);
        BedTruth then = TurnedBed.After(surface, screws, moves, turned, turning);
        return new WorkshopVisit(seed, a, b, surface, head, heardA, heardB, readings, probed, screws, TappedHead.Record(head, tap))
        {
            Contact = contact,
            Warmed = parts,
            ContactTrials = FeltContact.Feel(contact, touching),
            ScrewMoves = moves,
            Turned = turned,
            BedThen = then,
            ProbedAgain = Probe(turning, then),
            Extruder = extruder,
            Walls = PrintedPieces.Walls(extruder, prints),
            Fits = PrintedPieces.Fits(extruder, prints),
            Drive = drive,
            DriveReadings = DrivenHead.Read(drive, a.Span, b.Span, driving),
        };
    }

    private static (BeltTruth Truth, float[] Heard) Belt(SeededRandom random, SeededRandom sound, double density, double rigidity, double tension)
    {
        var span = new StiffSpan(
            random.Between(0.15, 0.3), tension, density, rigidity, EndSpring(random, tension, rigidity), EndSpring(random, tension, rigidity));
        var scene = new PluckScene(
            Plucks: 3,
            SecondsBetween: 0.9,
            Quality: sound.LogBetween(25, 90),
            QualityTrend: sound.Between(-0.3, 0.2),
            Glide: sound.Between(0.002, 0.015),
            Noise: sound.LogBetween(0.002, 0.01),
            Hum: sound.LogBetween(0.0005, 0.003),
            RollOffHertz: 150);
        IReadOnlyList<SpanMode> modes = span.Modes(12);
        float[] heard = PluckedRecording.Of(span, modes, scene, sound);
        return (new BeltTruth(span, scene, [.. modes.Select(mode => mode.FrequencyHertz)]), heard);
    }

    /// <summary>An end between pinned and clamped: the spring that carries a uniformly drawn share of the clamp's moment.</summary>
    private static double EndSpring(SeededRandom random, double tension, double rigidity)
    {
        double share = random.Between(0, 1);
        return Math.Sqrt(tension * rigidity) * share / (1 - share);
    }

    private static BedTruth Bed(SeededRandom random) => new(
        OffsetMillimetres: random.Normal(0, 0.1),
        SlopeX: random.Normal(0, 1e-3),
        SlopeY: random.Normal(0, 1e-3),
        BowMillimetres: random.Normal(0, 0.03),
        TwistMillimetres: random.Normal(0, 0.02),
        ProbeNoiseMillimetres: random.Between(0.005, 0.010));

    private static HeadTruth Head(SeededRandom random) => new(
        ModesX: Modes(random),
        ModesY: Modes(random),
        TapSeconds: random.Between(0.001, 0.003),
        RateHertz: 1600,
        NoiseMetresPerSecondSquared: random.LogBetween(0.05, 0.2),
        JitterSeconds: random.Between(0, 2e-5),
        ClockError: random.Normal(0, 5e-5),
        LeanX: random.Normal(0, 0.02),
        LeanY: random.Normal(0, 0.02));

    /// <summary>The axis on its belt, and something on the head that rings higher and less.</summary>
    private static DampedMode[] Modes(SeededRandom random)
    {
        var first = new DampedMode(random.Between(35, 70), random.Between(0.03, 0.1), random.Between(40, 120));
        return
        [
            first,
            new DampedMode(first.FrequencyHertz * random.Between(1.8, 3), random.Between(0.02, 0.06), first.Weight * random.Between(0.15, 0.6)),
        ];
    }

    private static Reading Read(SeededRandom random, string quantity, double truth, string unit, double error, double step) =>
        new(quantity, Steps(truth + random.Normal(0, error), step), unit, error, step);

    private static ProbedHeight[] Probe(SeededRandom random, BedTruth bed)
    {
        const int side = 5;
        const double step = 0.001;
        double worth = Math.Round(Math.Sqrt((bed.ProbeNoiseMillimetres * bed.ProbeNoiseMillimetres) + (step * step / 12)), 5);
        var heights = new ProbedHeight[side * side];
        for (int i = 0; i < heights.Length; i++)
        {
            double x = BedTruth.Centre + (BedTruth.Reach * ((2.0 * (i % side) / (side - 1)) - 1));
            double y = BedTruth.Centre + (BedTruth.Reach * ((2.0 * (i / side) / (side - 1)) - 1));
            heights[i] = new ProbedHeight(x, y, Steps(bed.HeightAt(x, y) + random.Normal(0, bed.ProbeNoiseMillimetres), step), worth);
        }

        return heights;
    }

    private static BedScrew[] Screws(SeededRandom random)
    {
        string thread = random.Whole(0, 1) == 0 ? "M3" : "M4";
        string clockwise = random.Whole(0, 1) == 0 ? "lowers" : "raises";
        return random.Whole(3, 4) == 3
            ?
            [
                new("front left", 30, 30, thread, "below", clockwise),
                new("front right", 190, 30, thread, "below", clockwise),
                new("rear middle", 110, 190, thread, "below", clockwise),
            ]
            :
            [
                new("front left", 30, 30, thread, "below", clockwise),
                new("front right", 190, 30, thread, "below", clockwise),
                new("rear left", 30, 190, thread, "below", clockwise),
                new("rear right", 190, 190, thread, "below", clockwise),
            ];
    }

    private static double Steps(double value, double step) => Math.Round(Math.Round(value / step) * step, 6);
}
