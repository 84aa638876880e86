using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Moves over a height model.</summary>
public static class HeightModelMoves
{
    private const double LeastDeviation = 1e-9;

    /// <summary>Splits a straight move so that straight pieces stay within a tolerance of the model's height, along z, everywhere on the move.</summary>
    /// <param name="model">The model.</param>
    /// <param name="from">Where the move begins.</param>
    /// <param name="to">Where it ends, elsewhere than it begins.</param>
    /// <param name="maximumDeviation">Largest distance along z, 1 nm or more. A twentieth of the layer height does no harm to a first layer (common practice, no source).</param>
    /// <returns>The pieces, as few as there can be between the candidates.</returns>
    /// <remarks>
    /// <para>Candidates for knots are the crossings of cell borders and, between two crossings of length h, places that divide them evenly: with
    /// r = h √(max|z″|/(8 tolerance)), the number of pieces the stretch would need by itself, 16⌈r⌉ parts, where r is less than 1 ⌈16r⌉, and 4 at least. Of all divisions at candidates one with the
    /// fewest pieces is taken, and of those the one with the smallest sum of squared lengths.</para>
    /// <para>In a bilinear cell the height along a line is a parabola, z″ = 2c sin θ cos θ with c = (z₁₁ − z₁₀ − z₀₁ + z₀₀)/(hₓ h_y), and one piece reaches √(8 tolerance/|z″|); all
    /// of it is computed exactly. In a bicubic cell it is a polynomial of degree six, held between its Bernstein coefficients, so the bound is proven. A model that is not made of
    /// polynomials is sampled, and <see cref="FollowedMove.IsProven"/> is false.</para>
    /// Source: chord error of a parabola, any text on numerical analysis; fewest chords by a shortest path, Imai, Iri 1988, Polygonal approximations of a curve (from memory).
    /// </remarks>
    /// <exception cref="ArgumentException">The move has no length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The move leaves a domain that refuses the outside, or the tolerance is below 1 nm or so small that the move needs more than <see cref="FollowedMove.MostSegments"/> pieces.
    /// </exception>
    /// <example><code>
    /// FollowedMove move = model.Follow(from, to, maximumDeviation: Length.FromMicrometers(5));
    /// foreach (MoveSegment piece in move.Segments) { /* piece.End, piece.EndHeight */ }
    /// </code></example>
    public static FollowedMove Follow(this IHeightModel model, SurfacePosition from, SurfacePosition to, Length maximumDeviation) =>
        FollowShare(Guard.NotNull(model), from, to, maximumDeviation, 1);

    /// <summary>Follows a share of the height, from 0 to 1.</summary>
    internal static FollowedMove FollowShare(IHeightModel model, SurfacePosition from, SurfacePosition to, Length maximumDeviation, double share)
    {
        double tolerance = Guard.Finite(maximumDeviation.Meters, nameof(maximumDeviation));
        return tolerance >= LeastDeviation
            ? FollowedMove.Along(model, from, to, tolerance, share)
            : throw Guard.Out(nameof(maximumDeviation), tolerance, "1e-9 m or more");
    }
}
