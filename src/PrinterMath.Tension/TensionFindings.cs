namespace PrinterMath.Tension;

/// <summary>Codes of the findings about spans and pairs of belts.</summary>
public static class TensionFindings
{
    /// <summary>Blocking: the frequency is lower than the belt's own rigidity would give without any tension.</summary>
    public const string Slack = "span.slack";

    /// <summary>Caution: bending of the belt makes up more than a fifth of the restoring force; the span is too short or too slack for a plucked reading.</summary>
    public const string StiffnessDominates = "span.stiffness-dominates";

    /// <summary>Caution: the tension is far from what any belt of such a machine carries; a unit is probably wrong.</summary>
    public const string Implausible = "span.implausible";
}
