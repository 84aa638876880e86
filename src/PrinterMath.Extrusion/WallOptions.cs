using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>How a measured wall is built.</summary>
public sealed record WallOptions
{
    /// <summary>Number of beads side by side.</summary>
    /// <value>1. At least 1.</value>
    public int Beads { get; init; } = 1;

    /// <summary>Distance of the beads' centre lines.</summary>
    /// <value>Null: the spacing at which the commanded bead fills the layer, see <see cref="Bead.FillingSpacing"/>. Greater than zero and at most the width otherwise.</value>
    public Length? Spacing { get; init; }

    /// <summary>By how much the calipers, which rest on the crests of the widest layers, read more than the mean bead; zero or more.</summary>
    /// <value>Null: none. State a range, for example <c>Measured.FromRange</c> from 0 to 0.02 mm, where layers do not lie exactly above each other.</value>
    public Measured<Length>? CrestHeight { get; init; }

    /// <summary>Name of the estimate.</summary>
    /// <value>Null: made from the number of beads. Two walls of equal make need names.</value>
    public string? Name { get; init; }
}
