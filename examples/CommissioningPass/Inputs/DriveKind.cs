namespace CommissioningPass.Inputs;

/// <summary>A quantity that drive.csv may hold, with the range (SI) in which a sound number lies.</summary>
/// <param name="Quantity">Its name.</param>
/// <param name="Units">The units it may be in.</param>
/// <param name="Lowest">Lowest sound value.</param>
/// <param name="Highest">Highest sound value.</param>
/// <param name="Worth">Whether it has an uncertainty.</param>
/// <param name="Needed">Whether drive.csv must hold it.</param>
/// <param name="Default">What is used in its place, in words; null when nothing is.</param>
internal sealed record DriveKind(string Quantity, UnitTable Units, double Lowest, double Highest, DriveWorth Worth, bool Needed = false, string? Default = null)
{
    internal static readonly DriveKind BeamLength = new("beam_length", UnitTable.Length, 0.05, 3, DriveWorth.Exact, Needed: true);
    internal static readonly DriveKind Depth = new("depth", UnitTable.Length, 0.05, 3, DriveWorth.Exact, Needed: true);
    internal static readonly DriveKind CarriageLength = new("carriage_length", UnitTable.Length, 0.005, 0.5, DriveWorth.Exact, Needed: true);
    internal static readonly DriveKind TravelXFrom = new("travel_x_from", UnitTable.Length, 0.001, 3, DriveWorth.Exact, Needed: true);
    internal static readonly DriveKind TravelXTo = new("travel_x_to", UnitTable.Length, 0.001, 3, DriveWorth.Exact, Needed: true);
    internal static readonly DriveKind TravelYFrom = new("travel_y_from", UnitTable.Length, 0.001, 3, DriveWorth.Exact, Needed: true);
    internal static readonly DriveKind TravelYTo = new("travel_y_to", UnitTable.Length, 0.001, 3, DriveWorth.Exact, Needed: true);
    internal static readonly DriveKind BeltPitch = new("belt_pitch", UnitTable.Length, 0.001, 0.01, DriveWorth.Exact, Needed: true);
    internal static readonly DriveKind PulleyTeeth = new("pulley_teeth", UnitTable.Count, 8, 100, DriveWorth.Exact, Needed: true);
    internal static readonly DriveKind BeltWidth = new("belt_width", UnitTable.Length, 0.003, 0.05, DriveWorth.Exact, Needed: true);
    internal static readonly DriveKind Acceleration = new("acceleration", UnitTable.Acceleration, 0.1, 200, DriveWorth.Exact, Needed: true);
    internal static readonly DriveKind Speed = new("speed", UnitTable.Speed, 0.005, 3, DriveWorth.Exact, Needed: true);

    internal static readonly DriveKind MassX = new("mass_x", UnitTable.Mass, 0.02, 20, DriveWorth.Measured, Default: "0.2 to 0.7 kg");
    internal static readonly DriveKind MassY = new("mass_y", UnitTable.Mass, 0.02, 20, DriveWorth.Measured, Default: "0.5 to 1.5 kg");
    internal static readonly DriveKind Friction = new("friction", UnitTable.Force, 0.01, 50, DriveWorth.Measured, Default: "0.5 to 4 N");
    internal static readonly DriveKind SlackSideShare = new("slack_side_share", UnitTable.Ratio, 0, 1, DriveWorth.Stated, Default: "10 to 30 % of the force");
    internal static readonly DriveKind ShaftLoad = new("shaft_load", UnitTable.Force, 1, 2000, DriveWorth.Stated, Default: "no limit, only a warning: look up the maker's");
    internal static readonly DriveKind IdlerLoad = new("idler_load", UnitTable.Force, 5, 5000, DriveWorth.Stated, Default: "80 to 300 N");
    internal static readonly DriveKind WorkingStrength = new("working_strength", UnitTable.ForcePerLength, 500, 1e5, DriveWorth.Stated, Default: "4 to 15 N/mm");
    internal static readonly DriveKind BeltStiffness = new("belt_stiffness", UnitTable.ForcePerLength, 1e5, 2e7, DriveWorth.Measured, Default: "1500 to 3000 N/mm");

    internal static readonly DriveKind HoldingTorque = new("holding_torque", UnitTable.Torque, 0.01, 10, DriveWorth.Measured);
    internal static readonly DriveKind RatedCurrent = new("rated_current", UnitTable.Current, 0.05, 10, DriveWorth.Exact);
    internal static readonly DriveKind Resistance = new("winding_resistance", UnitTable.Resistance, 0.1, 100, DriveWorth.Measured);
    internal static readonly DriveKind Voltage = new("supply_voltage", UnitTable.Voltage, 5, 100, DriveWorth.Exact);
    internal static readonly DriveKind RunCurrent = new("run_current", UnitTable.Current, 0.05, 10, DriveWorth.Exact, Default: "the rated current");
    internal static readonly DriveKind Inductance = new("winding_inductance", UnitTable.Inductance, 1e-4, 0.1, DriveWorth.Measured, Default: "1 to 6 mH");
    internal static readonly DriveKind RotorInertia = new("rotor_inertia", UnitTable.Inertia, 1e-7, 1e-3, DriveWorth.Measured, Default: "30 to 90 g·cm²");

    internal static readonly DriveKind TensionerLead = new("tensioner_lead", UnitTable.Length, 1e-4, 0.01, DriveWorth.Exact);
    internal static readonly DriveKind TensionerStrands = new("tensioner_strands", UnitTable.Count, 1, 2, DriveWorth.Exact);
    internal static readonly DriveKind TurnsA = new("last_turns_a", UnitTable.Count, -10, 10, DriveWorth.Measured);
    internal static readonly DriveKind BeforeA = new("frequency_before_a", UnitTable.Frequency, 10, 2000, DriveWorth.Measured);
    internal static readonly DriveKind TurnsB = new("last_turns_b", UnitTable.Count, -10, 10, DriveWorth.Measured);
    internal static readonly DriveKind BeforeB = new("frequency_before_b", UnitTable.Frequency, 10, 2000, DriveWorth.Measured);

    /// <summary>Without all of these the motor is not judged.</summary>
    internal static readonly DriveKind[] Motor = [HoldingTorque, RatedCurrent, Resistance, Voltage];

    /// <summary>Only of use where the motor is judged.</summary>
    internal static readonly DriveKind[] MotorDetails = [RunCurrent, Inductance, RotorInertia];

    /// <summary>Each means nothing without the other.</summary>
    internal static readonly (DriveKind First, DriveKind Second)[] Pairs = [(TensionerLead, TensionerStrands), (TurnsA, BeforeA), (TurnsB, BeforeB)];

    internal static readonly DriveKind[] Loads = [MassX, MassY, Friction, SlackSideShare, ShaftLoad, IdlerLoad, WorkingStrength, BeltStiffness];

    internal static readonly DriveKind[] All =
    [
        BeamLength, Depth, CarriageLength, TravelXFrom, TravelXTo, TravelYFrom, TravelYTo, BeltPitch, PulleyTeeth, BeltWidth, Acceleration, Speed,
        .. Loads, .. Motor, .. MotorDetails, TensionerLead, TensionerStrands, TurnsA, BeforeA, TurnsB, BeforeB,
    ];
}
