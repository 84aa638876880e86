namespace PrinterMath.Tramming;

/// <summary>Where the height of a contact comes from.</summary>
public enum ContactMethod
{
    /// <summary>The interval between the lowest clear and the highest touching height.</summary>
    Interval,

    /// <summary>A logistic curve through repeated answers.</summary>
    Logistic,
}
