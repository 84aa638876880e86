namespace WorkshopSimulator;

/// <summary>The owner's first round: turns worked out on paper from the first probing, made by hand on screws that do not quite move what their thread says.</summary>
internal static class TurnedBed
{
    private const double HandDegrees = 3;
    private const double LeadSpread = 0.05;
    private const double Coupling = 0.02;

    /// <summary>The owner reads the knob to five degrees and leaves what is less than ten.</summary>
    private const double StepDegrees = 5;
    private const double LeastDegrees = 10;

    internal static IReadOnlyList<ScrewTruth> Screws(IReadOnlyList<BedScrew> screws, SeededRandom random) =>
    [
        .. screws.Select(screw => new ScrewTruth(
            screw.Name,
            [.. screws.Select(other => Pitch(screw) * (other == screw ? random.Normal(1, LeadSpread) : random.Normal(0, Coupling)))])),
    ];

    internal static IReadOnlyList<MadeTurn> Turns(IReadOnlyList<ProbedHeight> probed, IReadOnlyList<BedScrew> screws)
    {
        Ramp ramp = Ramp.Through([.. probed.Select(p => (p.X, p.Y, p.Z))]);
        double mean = screws.Average(screw => ramp.At(screw.X, screw.Y));
        var turns = new List<MadeTurn>();
        foreach (BedScrew screw in screws)
        {
            double raise = mean - ramp.At(screw.X, screw.Y);
            double degrees = Math.Round(Math.Abs(raise) / Pitch(screw) * 360 / StepDegrees) * StepDegrees;
            if (degrees >= LeastDegrees)
            {
                turns.Add(new MadeTurn(2, screw.Name, raise > 0 == (screw.Clockwise == "raises") ? "clockwise" : "counterclockwise", degrees));
            }
        }

        return turns;
    }

    /// <summary>The bed after the turns: a stiff plate that lies on its screws as well as it can.</summary>
    internal static BedTruth After(BedTruth bed, IReadOnlyList<BedScrew> screws, IReadOnlyList<ScrewTruth> truth, IReadOnlyList<MadeTurn> turns, SeededRandom random)
    {
        double[] raised = new double[screws.Count];
        foreach (MadeTurn turn in turns)
        {
            int k = screws.ToList().FindIndex(screw => screw.Name == turn.Screw);
            double turned = (turn.Degrees + random.Normal(0, HandDegrees)) / 360;
            double sign = turn.Sense == "clockwise" == (screws[k].Clockwise == "raises") ? 1 : -1;
            for (int i = 0; i < raised.Length; i++)
            {
                raised[i] += sign * turned * truth[k].MovesMillimetres[i];
            }
        }

        var move = Ramp.Through([.. screws.Select((screw, i) => (screw.X, screw.Y, raised[i]))]);
        return bed with
        {
            OffsetMillimetres = bed.OffsetMillimetres + move.At(BedTruth.Centre, BedTruth.Centre),
            SlopeX = bed.SlopeX + move.SlopeX,
            SlopeY = bed.SlopeY + move.SlopeY,
        };
    }

    private static double Pitch(BedScrew screw) => screw.Thread == "M3" ? 0.5 : 0.7;
}
