using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>A location that a few wrong readings hardly move, with its spread and standard uncertainty.</summary>
/// <remarks>
/// Made by <see cref="HuberLocation"/> or <see cref="AlgorithmA"/>. When more than half of the readings are alike there is no spread: the
/// numbers throw <see cref="IndeterminateException"/>.
/// </remarks>
/// <example><code>
/// RobustLocation centre = HuberLocation.Of(readings);
/// Measured&lt;Length&gt; z = Measured.Of(Length.FromMeters(centre.Location), Length.FromMeters(centre.StandardUncertainty));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class RobustLocation
{
    private readonly (double Location, double Spread, double StandardUncertainty)? _estimate;
    private readonly ReadOnlyCollection<Finding> _findings;
    private readonly ReadOnlyCollection<int> _limited;

    internal RobustLocation(
        (double Location, double Spread, double StandardUncertainty)? estimate, int[] limited, int iterations, IEnumerable<Finding> findings)
    {
        _estimate = estimate;
        _limited = Array.AsReadOnly(limited);
        Iterations = iterations;
        _findings = Array.AsReadOnly(findings.ToArray());
    }

    /// <summary>What was noticed: readings counted in part, no spread, steps not enough.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Robust location, in the unit of the readings.</summary>
    /// <exception cref="IndeterminateException">More than half of the readings are alike.</exception>
    public double Location => Estimate.Location;

    /// <summary>Robust standard deviation of one reading, greater than zero, in the unit of the readings.</summary>
    /// <exception cref="IndeterminateException">More than half of the readings are alike.</exception>
    public double Spread => Estimate.Spread;

    /// <summary>Standard uncertainty of <see cref="Location"/>, greater than zero, in the unit of the readings.</summary>
    /// <exception cref="IndeterminateException">More than half of the readings are alike.</exception>
    public double StandardUncertainty => Estimate.StandardUncertainty;

    /// <summary>Indices, from 0, of the readings too far out to count in full.</summary>
    public IReadOnlyList<int> LimitedReadings => _limited;

    /// <summary>Steps taken.</summary>
    public int Iterations { get; }

    private (double Location, double Spread, double StandardUncertainty) Estimate =>
        _estimate ?? throw new IndeterminateException(_findings.First(f => f.Severity == FindingSeverity.Blocking));

    /// <summary>Location and standard uncertainty, if the readings show a spread.</summary>
    /// <param name="location">Robust location; zero when there is none.</param>
    /// <param name="standardUncertainty">Its standard uncertainty; zero when there is none.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetLocation(out double location, out double standardUncertainty)
    {
        (location, _, standardUncertainty) = _estimate.GetValueOrDefault();
        return _estimate is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Location and standard uncertainty, or what is missing.</returns>
    public override string ToString() => _estimate is (double location, _, double u)
        ? string.Create(CultureInfo.InvariantCulture, $"{location:G6} ± {u:G2}")
        : string.Join("; ", _findings);
}
