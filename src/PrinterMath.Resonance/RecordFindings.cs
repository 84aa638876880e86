namespace PrinterMath.Resonance;

/// <summary>Codes of the findings about acceleration records.</summary>
public static class RecordFindings
{
    /// <summary>Blocking: too few different times to find a sample rate.</summary>
    public const string NoClock = "record.no-clock";

    /// <summary>Note: the times were not in order and have been sorted.</summary>
    public const string Unsorted = "record.unsorted";

    /// <summary>Note: rows with the same time and values stood twice; the copies were dropped.</summary>
    public const string Duplicates = "record.duplicates";

    /// <summary>Caution: many rows share a time; the stamps are coarser than the samples, which were placed by their count.</summary>
    public const string CoarseStamps = "record.coarse-stamps";

    /// <summary>Caution: samples are missing; the gaps were bridged by straight lines.</summary>
    public const string Gaps = "record.gaps";

    /// <summary>Caution: the times look like milliseconds or microseconds, not seconds.</summary>
    public const string TimeUnit = "record.time-unit";

    /// <summary>Caution: gravity reads about 1 or about 9800; the values look like units of g or mm/s².</summary>
    public const string AccelerationUnit = "record.acceleration-unit";

    /// <summary>Caution: an axis never changes.</summary>
    public const string DeadAxis = "record.dead-axis";

    /// <summary>Caution: an axis stays at the end of its range.</summary>
    public const string Saturated = "record.saturated";

    /// <summary>Note: no gravity in the record; it has been removed before, so there is no orientation.</summary>
    public const string NoGravity = "record.no-gravity";

    /// <summary>Caution: the stamps scatter by more than a fifth of the sample period.</summary>
    public const string Jitter = "record.jitter";
}
