using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>What flow does to the clearance between two mating pieces, by the bead model.</summary>
/// <remarks>
/// At a relative change of flow q a bead of area A and height h becomes q·A/h wider, half of it to each side, while its centre line stays. Each printed piece has
/// two faces that bound the clearance, so the clearance over both sides changes by −q·A/h for each printed piece. Derived from <see cref="Bead"/>.
/// </remarks>
/// <example><code>Length change = FitClearance.Change(bead, relativeFlowChange: 0.01);   // about −8 µm for 0.45 mm x 0.2 mm, both pieces printed</code></example>
public static class FitClearance
{
    /// <summary>Change of the clearance, both sides together: negative is tighter.</summary>
    /// <param name="bead">Bead of the outermost wall.</param>
    /// <param name="relativeFlowChange">Relative change of flow q, a ratio above −1.</param>
    /// <param name="printedPieces">How many of the two pieces are printed at that flow, 1 or 2.</param>
    /// <returns>The change.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="InvalidOperationException">The bead is the default.</exception>
    public static Length Change(Bead bead, double relativeFlowChange, int printedPieces = 2)
    {
        Guard.StrictlyBetween(relativeFlowChange, -1, double.PositiveInfinity);
        Guard.Between(printedPieces, 1, 2);
        return Length.FromMeters(-2 * printedPieces * EdgeShiftMeters(bead) * relativeFlowChange);
    }

    /// <summary>A/(2h): how far an edge moves for one unit of relative flow.</summary>
    internal static double EdgeShiftMeters(Bead bead) => bead.AreaSquareMeters / (2 * bead.HeightMeters);
}
