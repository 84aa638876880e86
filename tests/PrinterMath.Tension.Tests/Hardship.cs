namespace PrinterMath.Tension.Tests;

/// <summary>What makes a simulated recording hard.</summary>
public enum Hardship
{
    White,
    PinkNoise,
    MicrophoneRollOff,
    HumBesideAPartial,
    EvenPartialsDominate,
    LongString,
    NeighbourRings,
    LevelControl,
    Gate,
    Glide,
}
