using System.Globalization;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>What was done to a record to make it uniform, in numbers.</summary>
/// <remarks>Nothing repaired: every count is zero. Not to be confused with the record's findings, which say what it means.</remarks>
public sealed class RecordRepair
{
    internal RecordRepair(int moved, int dropped, int gaps, int missing, int resampled, double jitterSeconds)
    {
        Moved = moved;
        Dropped = dropped;
        Gaps = gaps;
        Missing = missing;
        Resampled = resampled;
        JitterSeconds = jitterSeconds;
    }

    /// <summary>Rows that stood earlier than the row before them; all rows were sorted by time when this is not zero.</summary>
    public int Moved { get; }

    /// <summary>Rows dropped because the same time stood there already.</summary>
    public int Dropped { get; }

    /// <summary>Places where samples are missing.</summary>
    public int Gaps { get; }

    /// <summary>Samples missing in the gaps, filled by straight lines.</summary>
    public int Missing { get; }

    /// <summary>Samples outside gaps whose values were interpolated to the grid.</summary>
    public int Resampled { get; }

    /// <summary>Scatter of the stamps about the uniform grid: 1.4826 times the median absolute deviation.</summary>
    public Duration Jitter => Duration.FromSeconds(JitterSeconds);

    internal double JitterSeconds { get; }

    /// <summary>Invariant text.</summary>
    /// <returns>The counts in a sentence.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Moved} rows moved, {Dropped} dropped, {Missing} samples filled in {Gaps} gaps, {Resampled} samples interpolated; stamps scatter by {JitterSeconds * 1e6:0.##} µs");
}
