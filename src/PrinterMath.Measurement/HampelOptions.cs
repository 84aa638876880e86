namespace PrinterMath.Measurement;

/// <summary>When a reading counts as an outlier.</summary>
/// <example><code>var options = new HampelOptions { SmallestSpread = 0.01 / Math.Sqrt(12) };</code></example>
public sealed record HampelOptions
{
    /// <summary>Score beyond which a reading is an outlier, a ratio greater than zero.</summary>
    /// <value>3 unless stated.</value>
    public double Threshold { get; init; } = 3;

    /// <summary>
    /// A spread that the readings have at least, in their unit, zero or more: resolution/√12, for readings so coarse that most are alike.
    /// </summary>
    /// <value>Zero unless stated.</value>
    public double SmallestSpread { get; init; }
}
