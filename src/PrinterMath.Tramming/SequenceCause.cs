namespace PrinterMath.Tramming;

/// <summary>Why a sequence of passes does not go where the turns should bring it.</summary>
public enum SequenceCause
{
    /// <summary>A lead, or the sense of a turn, is not what was stated.</summary>
    Lead,

    /// <summary>A reversed screw turns some way before the bed follows.</summary>
    Backlash,

    /// <summary>The shape of the bed (twist, bow) changes from pass to pass.</summary>
    Flex,

    /// <summary>A corner or a point moved that no turn explains.</summary>
    Loose,

    /// <summary>Heights move with time.</summary>
    Drift,
}
