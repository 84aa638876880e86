namespace PrinterMath.Tramming;

/// <summary>What the hand turns, and whether it travels with the bed.</summary>
public enum TurnedPart
{
    /// <summary>The part stays with the frame and the bed travels along its thread: a thumb nut under the frame on a stud fixed in the bed.</summary>
    StaysWithFrame,

    /// <summary>The part travels with the bed: a screw whose head sits in the bed and whose thread runs in the frame.</summary>
    TravelsWithBed,
}
