using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>Variance components of a gauge study by one method.</summary>
/// <remarks>The methods need not agree on a category count: say which one was used.</remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class GaugeResult
{
    private readonly Finding[] _findings;
    private readonly GaugeComponent? _reproducibility;

    internal GaugeResult(
        GaugeMethod method, GaugeComponent repeatability, GaugeComponent? reproducibility, GaugeComponent gauge, GaugeComponent place, GaugeComponent total, double? interactionF, Finding?[] findings)
    {
        Method = method;
        Repeatability = repeatability;
        _reproducibility = reproducibility;
        Gauge = gauge;
        PlaceToPlace = place;
        Total = total;
        InteractionF = interactionF;
        _findings = [.. findings.OfType<Finding>()];
    }

    /// <summary>How the components were found.</summary>
    public GaugeMethod Method { get; }

    /// <summary>What was noticed.</summary>
    public IReadOnlyList<Finding> Findings => Array.AsReadOnly(_findings);

    /// <summary>Scatter of one operator (or probe) at one place: equipment variation.</summary>
    public GaugeComponent Repeatability { get; }

    /// <summary>Differences between operators (or probes): appraiser variation; by the analysis of variance with what operators and places do together, where that is kept.</summary>
    /// <exception cref="IndeterminateException">There is one operator (or probe) alone.</exception>
    public GaugeComponent Reproducibility => _reproducibility ?? throw new IndeterminateException(RepeatabilityFindings.OneOperator());

    /// <summary>Repeatability and reproducibility together: what the gauge adds.</summary>
    public GaugeComponent Gauge { get; }

    /// <summary>Differences between places (or parts): what is to be measured.</summary>
    public GaugeComponent PlaceToPlace { get; }

    /// <summary>Everything together.</summary>
    public GaugeComponent Total { get; }

    /// <summary>F of the interaction of operators and places; null by the range method and for one operator.</summary>
    public double? InteractionF { get; }

    /// <summary>1.41·σ(places)/σ(gauge), a ratio: how many categories of places the gauge tells apart, before rounding down.</summary>
    public double CategoryRatio => 1.41 * Math.Sqrt(PlaceToPlace.Variance / Gauge.Variance);

    /// <summary>Number of distinct categories: <see cref="CategoryRatio"/> rounded down, at least 1.</summary>
    public int DistinctCategories => Math.Max(1, (int)Math.Min(int.MaxValue, CategoryRatio));

    /// <summary>The reproducibility, where there are several operators (or probes).</summary>
    /// <param name="reproducibility">Differences between operators; null when there is one alone.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetReproducibility([NotNullWhen(true)] out GaugeComponent? reproducibility)
    {
        reproducibility = _reproducibility;
        return reproducibility is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Method, shares and categories.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Method}: gauge {Gauge.ShareOfVariation * 100:0.#} % of the variation, {DistinctCategories} categories");
}
