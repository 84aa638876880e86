using System.Diagnostics;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>The rectangle that the head can reach; a line for a single axis.</summary>
/// <example><code>var travel = new HeadTravel(HeadPosition.FromMillimeters(40, 60), HeadPosition.FromMillimeters(260, 280));</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class HeadTravel
{
    private const int Steps = 8;

    /// <summary>A travel between two corners.</summary>
    /// <param name="lowest">Front left corner.</param>
    /// <param name="highest">Rear right corner: not before and not left of the other, and not the same.</param>
    /// <exception cref="ArgumentException">The corners are the same or in the wrong order.</exception>
    public HeadTravel(HeadPosition lowest, HeadPosition highest)
    {
        if (highest.MetersX < lowest.MetersX || highest.MetersY < lowest.MetersY || highest == lowest)
        {
            throw Guard.Refused(nameof(highest), $"The travel goes from {lowest} to {highest}: the second corner must lie to the right of or behind the first.");
        }

        Lowest = lowest;
        Highest = highest;
    }

    /// <summary>Front left corner.</summary>
    public HeadPosition Lowest { get; }

    /// <summary>Rear right corner.</summary>
    public HeadPosition Highest { get; }

    /// <summary>The middle.</summary>
    public HeadPosition Middle => At(0.5, 0.5);

    /// <summary>A travel along x alone, at y = 0.</summary>
    /// <param name="from">Lowest x.</param>
    /// <param name="to">Highest x, greater than the lowest.</param>
    /// <returns>The travel.</returns>
    /// <exception cref="ArgumentException">The ends are in the wrong order.</exception>
    public static HeadTravel Along(Length from, Length to) => new(HeadPosition.Of(from, Length.Zero), HeadPosition.Of(to, Length.Zero));

    /// <summary>Whether a place lies in the travel, ends included.</summary>
    /// <param name="position">The place.</param>
    /// <returns>Whether the head can be there.</returns>
    public bool Contains(HeadPosition position) =>
        position.MetersX >= Lowest.MetersX && position.MetersX <= Highest.MetersX
        && position.MetersY >= Lowest.MetersY && position.MetersY <= Highest.MetersY;

    /// <summary>Invariant text.</summary>
    /// <returns>Both corners.</returns>
    public override string ToString() => $"{Lowest} to {Highest}";

    internal HeadPosition At(double shareX, double shareY) => new(
        Lowest.MetersX + (shareX * (Highest.MetersX - Lowest.MetersX)),
        Lowest.MetersY + (shareY * (Highest.MetersY - Lowest.MetersY)));

    /// <summary>Nine by nine places, corners, edges and middle among them: what changes with the head is monotone or bends once between the edges.</summary>
    internal IEnumerable<HeadPosition> Grid()
    {
        for (int i = 0; i <= Steps; i++)
        {
            for (int j = 0; j <= Steps; j++)
            {
                yield return At((double)i / Steps, (double)j / Steps);
            }
        }
    }
}
