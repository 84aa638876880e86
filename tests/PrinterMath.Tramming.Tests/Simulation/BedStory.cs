namespace PrinterMath.Tramming.Tests.Simulation;

/// <summary>What a simulated machine and its owner do: screws 3 or 4, passes, whether the owner hunts to and fro or follows the plan of stated leads, the fault and its size, in millimetres.</summary>
public sealed record BedStory(int Screws, int Passes, bool Hunts, BedFault Fault, double Size)
{
    internal const double Repeatability = .005;

    internal NoiseKind Noise { get; init; } = NoiseKind.Normal;

    /// <summary>Standard deviation of a true lead, relative; of the cross-coupling, in leads; of the setting of a turn, in turns.</summary>
    internal (double Lead, double Cross, double Setting) Spread { get; init; } = (.05, .02, 3.0 / 360);

    /// <summary>Readings along each side.</summary>
    internal int Side { get; init; } = 5;

    /// <summary>Height of the dome that the bed has to begin with.</summary>
    internal double Dome { get; init; } = .04;

    /// <summary>Whether the repeatability is told.</summary>
    internal bool IsStated { get; init; }

    internal double Tilt { get; init; } = .3;

    /// <summary>Share of the twist of four screws that the plate follows: 0 stiff, 1 limp.</summary>
    internal double Compliance { get; init; }
}
