namespace WorkshopSimulator;

/// <summary>The crossed drive of the invented machine: a heavy head, two alike motors, a screw for each belt.</summary>
internal static class DrivenHead
{
    private const double FrequencyError = 0.2;
    private const double TurnError = 0.02;

    internal static DriveTruth Draw(SeededRandom random)
    {
        double beam = random.Whole(320, 420) * 1e-3;
        double depth = random.Whole(340, 460) * 1e-3;
        double carriage = 2 * random.Whole(25, 40) * 1e-3;
        return new DriveTruth
        {
            BeamLength = beam,
            Depth = depth,
            CarriageLength = carriage,
            TravelXFrom = (carriage / 2) + 0.03,
            TravelXTo = beam - (carriage / 2) - 0.03,
            TravelYFrom = 0.04,
            TravelYTo = depth - 0.05,
            Teeth = random.Whole(0, 1) == 0 ? 16 : 20,
            MassX = random.Between(0.55, 0.8),
            MassY = random.Between(1.2, 1.8),
            Friction = random.Between(1.5, 3),
            SlackSideShare = random.Between(0.1, 0.3),
            BearingFriction = random.Between(0.001, 0.005),
            BendingLoss = random.Between(0.0005, 0.004),
            IdlerLoad = random.Between(80, 300),
            AxialStiffness = random.Between(9000, 18000),
            HoldingTorque = random.Between(0.45, 0.6),
            Resistance = random.Between(1.2, 1.8),
            Inductance = random.Between(2e-3, 3.5e-3),
            RotorInertia = random.Between(5e-6, 9e-6),
            PulleyInertia = random.Between(1e-7, 1e-6),
            MotorFriction = random.Between(0.002, 0.015),
            Strands = random.Whole(1, 2),
        };
    }

    /// <summary>Rows of drive.csv: drawing, data sheets, a kitchen scale, and the last turn of A, sometimes of B too, each followed by the recording of that belt.</summary>
    internal static IReadOnlyList<DriveReading> Read(DriveTruth drive, StiffSpan a, StiffSpan b, SeededRandom random)
    {
        // A data sheet bounds its numbers: they lie anywhere within ±√3·u of the truth.
        double Stated(double u) => random.Between(-1, 1) * Math.Sqrt(3) * u;
        List<DriveReading> rows =
        [
            new("beam_length", Millimetres(drive.BeamLength), "mm"),
            new("depth", Millimetres(drive.Depth), "mm"),
            new("carriage_length", Millimetres(drive.CarriageLength), "mm"),
            new("travel_x_from", Millimetres(drive.TravelXFrom), "mm"),
            new("travel_x_to", Millimetres(drive.TravelXTo), "mm"),
            new("travel_y_from", Millimetres(drive.TravelYFrom), "mm"),
            new("travel_y_to", Millimetres(drive.TravelYTo), "mm"),
            new("belt_pitch", 2, "mm"),
            new("pulley_teeth", drive.Teeth, "1"),
            new("belt_width", 6, "mm"),
            new("acceleration", DriveJob.Acceleration, "m/s2"),
            new("speed", DriveJob.Speed * 1e3, "mm/s"),
            new("mass_x", Math.Round(drive.MassX + random.Normal(0, 0.01), 3), "kg", 0.01),
            new("mass_y", Math.Round(drive.MassY + random.Normal(0, 0.03), 3), "kg", 0.03),
            new("friction", Math.Round(drive.Friction + random.Normal(0, 0.3), 2), "N", 0.3),
            new("shaft_load", DriveJob.ShaftLoad, "N"),
            new("working_strength", DriveJob.WorkingStrength, "N/mm"),
            new("holding_torque", Math.Round(drive.HoldingTorque + Stated(0.02), 3), "N.m", 0.02),
            new("rated_current", DriveJob.RatedCurrent, "A"),
            new("winding_resistance", Math.Round(drive.Resistance + Stated(0.05), 2), "Ohm", 0.05),
            new("winding_inductance", Math.Round((drive.Inductance * 1e3) + Stated(0.2), 2), "mH", 0.2),
            new("supply_voltage", DriveJob.Voltage, "V"),
            new("rotor_inertia", Math.Round((drive.RotorInertia * 1e7) + Stated(4), 1), "g.cm2", 4),
            new("tensioner_lead", DriveTruth.Lead * 1e3, "mm"),
            new("tensioner_strands", drive.Strands, "1"),
        ];
        rows.AddRange(LastTurn(drive, a, "a", random));
        return random.Whole(0, 1) == 0 ? rows : [.. rows, .. LastTurn(drive, b, "b", random)];
    }

    /// <summary>Half a turn, made a little wrong, and the pitch before it.</summary>
    private static IEnumerable<DriveReading> LastTurn(DriveTruth drive, StiffSpan span, string belt, SeededRandom random)
    {
        const double turns = 0.5;
        double before = span.TensionNewtons - (drive.GainPerTurn * (turns + random.Normal(0, TurnError)));
        double hertz = (span with { TensionNewtons = before }).Modes(1)[0].FrequencyHertz;
        yield return new DriveReading($"last_turns_{belt}", turns, "1", TurnError);
        yield return new DriveReading($"frequency_before_{belt}", Math.Round(hertz + random.Normal(0, FrequencyError), 2), "Hz", FrequencyError);
    }

    private static double Millimetres(double metres) => Math.Round(metres * 1e3, 3);
}
