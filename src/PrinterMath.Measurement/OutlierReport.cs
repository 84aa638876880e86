using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>Which readings lie far from the rest, and how far.</summary>
/// <remarks>Made by <see cref="HampelIdentifier"/>. Nothing is removed: whether an outlier was a mistake is for the person who measured to say.</remarks>
/// <example><code>foreach (int i in report.Indices) { Console.WriteLine($"reading {i}: score {report.Scores[i]:F1}"); }</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class OutlierReport
{
    private readonly ReadOnlyCollection<double>? _scores;
    private readonly ReadOnlyCollection<int>? _indices;
    private readonly ReadOnlyCollection<Finding> _findings;

    internal OutlierReport(double median, double spread, double threshold, double[]? scores, Finding[] findings)
    {
        Median = median;
        Spread = spread;
        Threshold = threshold;
        _findings = Array.AsReadOnly(findings);
        if (scores is not null)
        {
            _scores = Array.AsReadOnly(scores);
            _indices = Array.AsReadOnly(Enumerable.Range(0, scores.Length).Where(i => Math.Abs(scores[i]) > threshold).ToArray());
        }
    }

    /// <summary>Median of the readings, in their unit.</summary>
    public double Median { get; }

    /// <summary>Scaled median absolute deviation, or the smallest spread stated if that is larger; in the unit of the readings.</summary>
    public double Spread { get; }

    /// <summary>Score beyond which a reading is an outlier.</summary>
    public double Threshold { get; }

    /// <summary>What kept the readings from being scored.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Score of each reading, (xᵢ − median)/spread, a ratio with the sign of the deviation; all zero when all readings are alike.</summary>
    /// <exception cref="IndeterminateException">There is no spread to score by.</exception>
    public IReadOnlyList<double> Scores => _scores ?? throw new IndeterminateException(_findings[0]);

    /// <summary>Indices of the outliers, from 0, ascending.</summary>
    /// <exception cref="IndeterminateException">There is no spread to score by.</exception>
    public IReadOnlyList<int> Indices => _indices ?? throw new IndeterminateException(_findings[0]);

    /// <summary>Indices of the outliers, if there is a spread to score by.</summary>
    /// <param name="indices">The indices; empty when the readings cannot be scored.</param>
    /// <returns>Whether the readings could be scored.</returns>
    public bool TryGetIndices(out IReadOnlyList<int> indices)
    {
        indices = _indices is null ? [] : _indices;
        return _indices is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The outliers, or what is missing.</returns>
    public override string ToString() => _indices is null
        ? string.Join("; ", _findings)
        : string.Create(CultureInfo.InvariantCulture, $"{_indices.Count} outliers beyond {Threshold:G3} spreads of {Spread:G3} about {Median:G6}");
}
