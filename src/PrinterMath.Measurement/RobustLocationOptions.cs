namespace PrinterMath.Measurement;

/// <summary>How a robust location is found.</summary>
/// <example><code>var options = new RobustLocationOptions { TuningConstant = 2 };</code></example>
public sealed record RobustLocationOptions
{
    /// <summary>k: a reading counts in full up to k spreads from the centre and no further; from 1.2 to 10.</summary>
    /// <value>Null for the method's own: 1.345 for <see cref="HuberLocation"/> (95 % efficient for normal readings), 1.5 for <see cref="AlgorithmA"/>.</value>
    public double? TuningConstant { get; init; }

    /// <summary>Most steps taken, 1 or more.</summary>
    /// <value>1000 unless stated.</value>
    public int MaximumIterations { get; init; } = 1000;

    /// <summary>A step smaller than this part of the spread ends the search; from 10⁻¹⁴ to 0.1.</summary>
    /// <value>10⁻¹² unless stated.</value>
    public double Tolerance { get; init; } = 1e-12;
}
