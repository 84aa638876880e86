namespace PrinterMath.Tension;

/// <summary>Names of the inputs in the budgets of a span.</summary>
public static class SpanInputs
{
    /// <summary>Free length.</summary>
    public const string Length = "span length";

    /// <summary>Linear density.</summary>
    public const string Density = "linear density";

    /// <summary>Flexural rigidity.</summary>
    public const string Rigidity = "flexural rigidity";

    /// <summary>How the ends are held: 0 pinned, 1 clamped.</summary>
    public const string Ends = "end condition";

    /// <summary>Frequency heard.</summary>
    public const string Frequency = "frequency";

    /// <summary>Tension.</summary>
    public const string Tension = "tension";
}
