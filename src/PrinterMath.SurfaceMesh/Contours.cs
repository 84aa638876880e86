using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Lines of equal height of a model.</summary>
/// <remarks>
/// <para>Marching squares on a lattice that holds all cell borders of the model and is nowhere coarser than a step. A corner of the lattice at the level counts as above it. Each
/// corner of a line lies on a side of the lattice, at the model's own crossing, so on planes lines are exact. In a cell of a bilinear model whose corners lie above and below
/// crosswise, the sides are joined as the hyperbola runs: the ground above is connected where its saddle, (z₀₀z₁₁ − z₁₀z₀₁)/(z₀₀ + z₁₁ − z₁₀ − z₀₁), is at the level or
/// above. With other models that rule decides on each square of the lattice.</para>
/// <para>Between two corners a line is a chord; it departs from the model's line by about the step squared times the line's curvature over 8. Rises and dips that fit between
/// corners of the lattice are missed.</para>
/// Source: marching squares, the plane form of Lorensen, Cline 1987, Marching cubes, Computer Graphics 21; the rule for saddles, Nielson, Hamann 1991, The asymptotic decider,
/// Proc. Visualization '91 (both from memory).
/// </remarks>
/// <example><code>
/// IReadOnlyList&lt;ContourLine&gt; lines = Contours.Every(model, Length.FromMicrometers(20), largestStep: Length.FromMillimeters(5));
/// </code></example>
public static class Contours
{
    /// <summary>No lattice has more corners: 4 000 000.</summary>
    public const int MostCorners = 4_000_000;

    /// <summary>No more levels are drawn at once: 1000.</summary>
    public const int MostLevels = 1000;

    /// <summary>The lines at one height.</summary>
    /// <param name="model">The model.</param>
    /// <param name="level">The height.</param>
    /// <param name="largestStep">Largest spacing of the lattice, greater than zero.</param>
    /// <returns>The lines; none where the surface does not pass through the level.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range, or the lattice would have more than <see cref="MostCorners"/> corners.</exception>
    public static IReadOnlyList<ContourLine> At(IHeightModel model, Length level, Length largestStep)
    {
        double height = Guard.Finite(level.Meters, nameof(level));
        return ContourLattice.Over(Guard.NotNull(model), largestStep.Meters).Lines(height).AsReadOnly();
    }

    /// <summary>The lines at all multiples of an interval that the surface passes through, the lowest first.</summary>
    /// <param name="model">The model.</param>
    /// <param name="interval">Height between neighbouring levels, greater than zero.</param>
    /// <param name="largestStep">Largest spacing of the lattice, greater than zero.</param>
    /// <returns>The lines.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range, the lattice would have more than <see cref="MostCorners"/> corners, or there are more than <see cref="MostLevels"/> levels.</exception>
    public static IReadOnlyList<ContourLine> Every(IHeightModel model, Length interval, Length largestStep)
    {
        double step = Guard.Positive(interval.Meters, nameof(interval));
        ContourLattice lattice = ContourLattice.Over(Guard.NotNull(model), largestStep.Meters);
        double first = Math.Ceiling(lattice.Lowest / step), last = Math.Floor(lattice.Highest / step);
        if (last - first >= MostLevels)
        {
            throw Guard.Out(nameof(interval), step, FormattableString.Invariant($"large enough for at most {MostLevels} levels from {lattice.Lowest} to {lattice.Highest} m"));
        }

        List<ContourLine> lines = [];
        for (double k = first; k <= last; k++)
        {
            lines.AddRange(lattice.Lines(k * step));
        }

        return lines.AsReadOnly();
    }
}
