namespace PrinterMath.Extrusion;

/// <summary>Direction of the machine in which a feature was measured.</summary>
public enum PrintAxis
{
    /// <summary>First horizontal direction.</summary>
    X,

    /// <summary>Second horizontal direction.</summary>
    Y,

    /// <summary>Across the layers.</summary>
    Z,
}
