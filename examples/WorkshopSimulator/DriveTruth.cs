namespace WorkshopSimulator;

/// <summary>What is true of the crossed drive, in SI.</summary>
public sealed record DriveTruth
{
    /// <summary>Distance between the idlers at the ends of the beam.</summary>
    public required double BeamLength { get; init; }

    /// <summary>Distance from motor shafts to rear idlers.</summary>
    public required double Depth { get; init; }

    /// <summary>Distance between the places of the head that hold a belt's ends.</summary>
    public required double CarriageLength { get; init; }

    /// <summary>Travel of the head along x, from the left beam idler.</summary>
    public required double TravelXFrom { get; init; }

    /// <summary>End of that travel.</summary>
    public required double TravelXTo { get; init; }

    /// <summary>Travel of the head along y, from the motor shafts.</summary>
    public required double TravelYFrom { get; init; }

    /// <summary>End of that travel.</summary>
    public required double TravelYTo { get; init; }

    /// <summary>Teeth of all pulleys, of 2 mm pitch.</summary>
    public required int Teeth { get; init; }

    /// <summary>Mass that moves along x.</summary>
    public required double MassX { get; init; }

    /// <summary>Mass that moves along y.</summary>
    public required double MassY { get; init; }

    /// <summary>Friction of the guides at one belt.</summary>
    public required double Friction { get; init; }

    /// <summary>What the slack side must keep of the force, a ratio.</summary>
    public required double SlackSideShare { get; init; }

    /// <summary>Friction coefficient of the bearings.</summary>
    public required double BearingFriction { get; init; }

    /// <summary>Share of the tension lost at each pulley.</summary>
    public required double BendingLoss { get; init; }

    /// <summary>Load that an idler stands.</summary>
    public required double IdlerLoad { get; init; }

    /// <summary>Axial stiffness of a belt 6 mm wide, EA.</summary>
    public required double AxialStiffness { get; init; }

    /// <summary>Holding torque at the rated current.</summary>
    public required double HoldingTorque { get; init; }

    /// <summary>Resistance of a winding.</summary>
    public required double Resistance { get; init; }

    /// <summary>Inductance of a winding.</summary>
    public required double Inductance { get; init; }

    /// <summary>Inertia of the rotor.</summary>
    public required double RotorInertia { get; init; }

    /// <summary>Inertia of the motor's pulley.</summary>
    public required double PulleyInertia { get; init; }

    /// <summary>Friction of the motor.</summary>
    public required double MotorFriction { get; init; }

    /// <summary>Strands that a tensioner pulls.</summary>
    public required int Strands { get; init; }

    /// <summary>Pitch radius of all pulleys.</summary>
    public double Radius => Pitch * Teeth / (2 * Math.PI);

    /// <summary>Length of both strands of a belt together, the same wherever the head is.</summary>
    public double BothStrands => (2 * (Depth + BeamLength + Radius)) - CarriageLength + (2 * Math.PI * Radius);

    /// <summary>What a turn of a tensioner adds to its belt.</summary>
    public double GainPerTurn => Strands * AxialStiffness * Lead / (BothStrands + (Math.PI * Radius));

    internal const double Pitch = 2e-3;
    internal const double Lead = 0.5e-3;
}
