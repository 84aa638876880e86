namespace PrinterMath.Tension;

/// <summary>How two belts that share a load stand to each other.</summary>
public enum BeltEquality
{
    /// <summary>Equal within the limit.</summary>
    Equal,

    /// <summary>Different by more than the limit.</summary>
    Different,

    /// <summary>Not to be told from these readings: pluck again, or improve what the verdict names.</summary>
    PluckAgain,
}
