using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Tension;

/// <summary>Lowest and highest first natural frequency over the travel, at 81 places.</summary>
/// <example><code>FrequencyRange range = drive.FrequencyOverTravel();</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FrequencyRange
{
    internal FrequencyRange(AxisResponse lowest, AxisResponse highest)
    {
        Lowest = lowest;
        Highest = highest;
    }

    /// <summary>Where the first mode is lowest: usually the middle.</summary>
    public AxisResponse Lowest { get; }

    /// <summary>Where the first mode is highest: where strands are shortest.</summary>
    public AxisResponse Highest { get; }

    /// <summary>Invariant text.</summary>
    /// <returns>Both frequencies.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Lowest.LowestFrequency.Result} to {Highest.LowestFrequency.Result}");
}
