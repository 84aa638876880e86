namespace PrinterMath.Measurement;

/// <summary>How much a <see cref="Finding"/> weighs.</summary>
public enum FindingSeverity
{
    /// <summary>Worth knowing; the result stands.</summary>
    Note,

    /// <summary>The result stands but is weaker than it looks, or an input was set aside.</summary>
    Caution,

    /// <summary>The data hold no answer: the value's property throws <see cref="IndeterminateException"/>.</summary>
    Blocking,
}
