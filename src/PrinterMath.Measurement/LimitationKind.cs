namespace PrinterMath.Measurement;

/// <summary>What keeps a verdict undecided.</summary>
public enum LimitationKind
{
    /// <summary>The uncertainty as a whole is too large; no budget says where it comes from.</summary>
    ReduceUncertainty,

    /// <summary>Repeat the repeatable readings, as often as stated in all.</summary>
    Repeat,

    /// <summary>One input must be known better; repeating does not help.</summary>
    ImproveInput,

    /// <summary>The value sits so close to the limit that no practical improvement decides: change the value, or accept.</summary>
    ValueAtLimit,
}
