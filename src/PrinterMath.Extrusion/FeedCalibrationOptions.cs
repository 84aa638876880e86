using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>What is known of the ruler, and the limit that the feed is judged against.</summary>
public sealed record FeedCalibrationOptions
{
    /// <summary>Smallest step in which the measured length was read.</summary>
    /// <value>Null: not stated; readings that are all alike then hold no answer. Greater than zero otherwise.</value>
    public Length? Resolution { get; init; }

    /// <summary>Standard uncertainty of the ruler and of how it is laid on, the same for all trials.</summary>
    /// <value>Null: not stated; the result then carries a note that it counts scatter only. Greater than zero otherwise.</value>
    public Length? RulerUncertainty { get; init; }

    /// <summary>Standard uncertainty of the commanded length, the same for all trials.</summary>
    /// <value>Null: none, the drive counts its steps. Greater than zero otherwise.</value>
    public Length? CommandedUncertainty { get; init; }

    /// <summary>Limits of the relative feed error, measured/commanded − 1.</summary>
    /// <value>Null: no limit, so no verdict.</value>
    public Tolerance<double>? Limit { get; init; }

    /// <summary>Probability of a false alarm of each of the tests for drift, offset and outlier.</summary>
    /// <value>0.01. Greater than 0 and less than 0.5.</value>
    public double Significance { get; init; } = 0.01;
}
