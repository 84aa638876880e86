using System.Numerics;

namespace PrinterMath.Tramming;

/// <summary>
/// The plane with the least largest distance in z from given points (Chebyshev fit), exactly: the simplex method on the dual, which exchanges one of four
/// signed reference points at a time. Places are fixed and may be used again for other heights.
/// </summary>
/// <remarks>
/// Dual: greatest Σzᵢλᵢ with Σλᵢ = Σλᵢxᵢ = Σλᵢyᵢ = 0 and Σ|λᵢ| = 1. Grids and repeated places make it degenerate, so ties are broken lexicographically, which excludes
/// cycles. Optimal when no point is farther from the plane than the reference says: the two numbers bound the half-width from both sides.
/// Stiefel 1959, Über diskrete und lineare Tschebyscheff-Approximationen, Numerische Mathematik 1, 1; Dantzig, Orden, Wolfe 1955, Pacific Journal of Mathematics 5, 183 (both from memory).
/// </remarks>
internal sealed class MinimaxPlane
{
    private const int MostExchanges = 5000;
    private const double Rounding = 4e-15;

    private readonly double[] _x;
    private readonly double[] _y;
    private readonly int[] _start;
    private readonly ReferenceBasis _reference;

    /// <summary>A solver for places given as coordinates of order one, not all on one line.</summary>
    internal MinimaxPlane(double[] x, double[] y)
    {
        _x = x;
        _y = y;
        _start = Triangle(x, y);
        _reference = new ReferenceBasis(x, y);
    }

    /// <summary>Height at the origin, slopes, and half the width of the zone, for the heights last solved.</summary>
    internal double Offset { get; private set; }

    internal double SlopeX { get; private set; }

    internal double SlopeY { get; private set; }

    internal double HalfWidth { get; private set; }

    /// <summary>Half-width that the reference proves to be needed: at most <see cref="HalfWidth"/>, and equal to it but for rounding.</summary>
    internal double LeastHalfWidth { get; private set; }

    internal int Exchanges { get; private set; }

    /// <summary>Indices of the four reference points, signs (+1 on the upper limit) and shares |λ|, which add up to one.</summary>
    internal ReadOnlySpan<int> Reference => _reference.Points;

    internal ReadOnlySpan<double> Signs => _reference.Signs;

    internal ReadOnlySpan<double> Levels => _reference.Levels;

    internal void Solve(ReadOnlySpan<double> heights)
    {
        _reference.Begin(_start);
        Continue(heights);
    }

    /// <summary>Solves for heights like those last solved: exchanges begin at their reference, which is one for any heights.</summary>
    internal void Continue(ReadOnlySpan<double> heights)
    {
        double scale = 0;
        foreach (double z in heights)
        {
            scale = Math.Max(scale, Math.Abs(z));
        }

        Span<double> plane = stackalloc double[ReferenceBasis.Rows];
        Span<double> step = stackalloc double[ReferenceBasis.Rows];
        for (Exchanges = 0; ; Exchanges++)
        {
            _reference.Invert();
            _reference.Multipliers(heights, plane);
            int worst = Farthest(heights, plane, out double lowest, out double highest);
            double sign = heights[worst] - Height(worst, plane) >= 0 ? 1 : -1;
            double excess = Math.Max(-lowest, highest) - plane[3];
            if (excess <= Rounding * scale || _reference.Holds(worst, sign) || Exchanges == MostExchanges)
            {
                Offset = plane[0] + ((highest + lowest) / 2);
                SlopeX = plane[1];
                SlopeY = plane[2];
                HalfWidth = (highest - lowest) / 2;
                LeastHalfWidth = Math.Min(HalfWidth, Math.Max(0, plane[3]));
                return;
            }

            _reference.Exchange(worst, sign, step);
        }
    }

    internal double Height(int i) => Offset + (SlopeX * _x[i]) + (SlopeY * _y[i]);

    private double Height(int i, ReadOnlySpan<double> plane) => plane[0] + (plane[1] * _x[i]) + (plane[2] * _y[i]);

    private int Farthest(ReadOnlySpan<double> heights, ReadOnlySpan<double> plane, out double lowest, out double highest)
    {
        double a = plane[0], b = plane[1], c = plane[2];
        Span<double> block = stackalloc double[LowestHighest.Block];
        var extremes = LowestHighest.Nothing;
        for (int first = 0; first < heights.Length; first += LowestHighest.Block)
        {
            int count = Math.Min(LowestHighest.Block, heights.Length - first);
            ReadOnlySpan<double> z = heights.Slice(first, count), x = _x.AsSpan(first, count), y = _y.AsSpan(first, count);
            int vectors = count - (count % Vector<double>.Count);
            for (int i = 0; i < vectors; i += Vector<double>.Count)
            {
                (new Vector<double>(z[i..]) - new Vector<double>(a) - (b * new Vector<double>(x[i..])) - (c * new Vector<double>(y[i..]))).CopyTo(block[i..]);
            }

            for (int i = vectors; i < count; i++)
            {
                block[i] = z[i] - a - (b * x[i]) - (c * y[i]);
            }

            extremes.Take(block[..count], first);
        }

        lowest = extremes.Lowest;
        highest = extremes.Highest;
        return -lowest > highest ? extremes.LowestAt : extremes.HighestAt;
    }

    /// <summary>Three places that make a large triangle: the farthest from the first, and the farthest from their line.</summary>
    private static int[] Triangle(double[] x, double[] y)
    {
        int second = 0, third = 0;
        double longest = -1, highest = -1;
        for (int i = 0; i < x.Length; i++)
        {
            double d = ((x[i] - x[0]) * (x[i] - x[0])) + ((y[i] - y[0]) * (y[i] - y[0]));
            (longest, second) = d > longest ? (d, i) : (longest, second);
        }

        for (int i = 0; i < x.Length; i++)
        {
            double area = Math.Abs(((x[second] - x[0]) * (y[i] - y[0])) - ((x[i] - x[0]) * (y[second] - y[0])));
            (highest, third) = area > highest ? (area, i) : (highest, third);
        }

        return [0, second, third];
    }
}
