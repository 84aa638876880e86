using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>What is known of the instrument, and the limit that a spool is judged against.</summary>
public sealed record FilamentDiameterOptions
{
    /// <summary>Smallest step of the scale.</summary>
    /// <value>Null: not stated; readings that are all alike then hold no answer. Greater than zero otherwise.</value>
    public Length? Resolution { get; init; }

    /// <summary>Standard uncertainty of the instrument, the same for all readings.</summary>
    /// <value>Null: none known. Greater than zero otherwise.</value>
    public Length? InstrumentUncertainty { get; init; }

    /// <summary>Limits of the mean diameter of the spool.</summary>
    /// <value>Null: no limit, so no verdict.</value>
    public Tolerance<Length>? Limit { get; init; }
}
