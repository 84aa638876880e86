using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>One source of variation of a gauge study, as a standard deviation.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class GaugeComponent
{
    private readonly double _variance;
    private readonly double _total;
    private readonly (double Lower, double Upper)? _limits;

    internal GaugeComponent(string name, double variance, double total, (double Lower, double Upper)? limits)
    {
        Name = name;
        _variance = variance;
        _total = total;
        _limits = limits;
    }

    /// <summary>What varies.</summary>
    public string Name { get; }

    /// <summary>Standard deviation σ, zero or more.</summary>
    public Length StandardDeviation => Length.FromMeters(Math.Sqrt(_variance));

    /// <summary>σ²/σ² of the total, a ratio from 0 to 1; shares of the parts add up to that of their sum.</summary>
    public double ShareOfVariance => _variance / _total;

    /// <summary>σ/σ of the total, a ratio from 0 to 1; these do not add up.</summary>
    public double ShareOfVariation => Math.Sqrt(ShareOfVariance);

    internal double Variance => _variance;

    /// <summary>6σ over the width of a tolerance, a ratio: below 0.1 is good, above 0.3 is not enough (common practice of gauge studies).</summary>
    /// <param name="toleranceWidth">Upper less lower limit, greater than zero.</param>
    /// <returns>The ratio, zero or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The width is not positive.</exception>
    public double ShareOfTolerance(Length toleranceWidth) => 6 * Math.Sqrt(_variance) / Guard.Positive(toleranceWidth.Meters, nameof(toleranceWidth));

    /// <summary>95 % limits of the standard deviation; only the analysis of variance gives them.</summary>
    /// <param name="lower">Lower limit, zero or more.</param>
    /// <param name="upper">Upper limit.</param>
    /// <returns>Whether there are limits.</returns>
    public bool TryGetLimits(out Length lower, out Length upper)
    {
        (double low, double high) = _limits.GetValueOrDefault();
        lower = Length.FromMeters(Math.Sqrt(low));
        upper = Length.FromMeters(Math.Sqrt(high));
        return _limits is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Name, standard deviation and share.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Name}: {Math.Sqrt(_variance) * 1e6:G4} µm, {ShareOfVariation * 100:0.#} % of the variation");
}
