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
    private const int Rows = 4;
    private const int MostExchanges = 5000;
    private const double Tie = 1e-11;
    private const double Rounding = 4e-15;

    private readonly double[] _x;
    private readonly double[] _y;
    private readonly int[] _start;
    private readonly double[] _basis = new double[Rows * Rows];
    private readonly double[] _inverse = new double[Rows * Rows];
    private readonly double[] _lexical = new double[Rows * Rows];
    private readonly double[] _first = new double[Rows * Rows];
    private readonly int[] _index = new int[Rows];
    private readonly double[] _sign = new double[Rows];
    private readonly double[] _level = new double[Rows];

    /// <summary>A solver for places given as coordinates of order one, not all on one line.</summary>
    internal MinimaxPlane(double[] x, double[] y)
    {
        _x = x;
        _y = y;
        _start = Triangle(x, y);
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
    internal ReadOnlySpan<int> Reference => _index;

    internal ReadOnlySpan<double> Signs => _sign;

    internal ReadOnlySpan<double> Levels => _level;

    internal void Solve(ReadOnlySpan<double> heights)
    {
        Begin();
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

        Span<double> plane = stackalloc double[Rows];
        Span<double> step = stackalloc double[Rows];
        for (Exchanges = 0; ; Exchanges++)
        {
            Invert();
            Multipliers(heights, plane);
            int worst = Farthest(heights, plane, out double lowest, out double highest);
            double sign = heights[worst] - Height(worst, plane) >= 0 ? 1 : -1;
            double excess = Math.Max(-lowest, highest) - plane[3];
            if (excess <= Rounding * scale || IsReference(worst, sign) || Exchanges == MostExchanges)
            {
                Offset = plane[0] + ((highest + lowest) / 2);
                SlopeX = plane[1];
                SlopeY = plane[2];
                HalfWidth = (highest - lowest) / 2;
                LeastHalfWidth = Math.Min(HalfWidth, Math.Max(0, plane[3]));
                return;
            }

            Exchange(worst, sign, step);
        }
    }

    internal double Height(int i) => Offset + (SlopeX * _x[i]) + (SlopeY * _y[i]);

    private double Height(int i, ReadOnlySpan<double> plane) => plane[0] + (plane[1] * _x[i]) + (plane[2] * _y[i]);

    private bool IsReference(int point, double sign)
    {
        for (int k = 0; k < Rows; k++)
        {
            if (_index[k] == point && _sign[k] == sign)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>First reference: one point on both limits and two more, a zone of no width that contains the three.</summary>
    private void Begin()
    {
        _index[0] = _start[0];
        _index[1] = _start[0];
        _index[2] = _start[1];
        _index[3] = _start[2];
        for (int k = 0; k < Rows; k++)
        {
            _sign[k] = k == 1 ? -1 : 1;
            Column(k, _first);
        }
    }

    private void Column(int k, double[] matrix)
    {
        double s = _sign[k];
        matrix[k] = s;
        matrix[Rows + k] = s * _x[_index[k]];
        matrix[(2 * Rows) + k] = s * _y[_index[k]];
        matrix[(3 * Rows) + k] = 1;
    }

    /// <summary>Inverse of the reference, levels λ (its last column), and the rows that order ties.</summary>
    private void Invert()
    {
        for (int k = 0; k < Rows; k++)
        {
            Column(k, _basis);
        }

        _inverse.AsSpan().Clear();
        for (int k = 0; k < Rows; k++)
        {
            _inverse[(k * Rows) + k] = 1;
        }

        for (int c = 0; c < Rows; c++)
        {
            int pivot = c;
            for (int r = c + 1; r < Rows; r++)
            {
                pivot = Math.Abs(_basis[(r * Rows) + c]) > Math.Abs(_basis[(pivot * Rows) + c]) ? r : pivot;
            }

            double head = 1 / _basis[(pivot * Rows) + c];
            for (int k = 0; k < Rows; k++)
            {
                (_basis[(c * Rows) + k], _basis[(pivot * Rows) + k]) = (_basis[(pivot * Rows) + k], _basis[(c * Rows) + k]);
                (_inverse[(c * Rows) + k], _inverse[(pivot * Rows) + k]) = (_inverse[(pivot * Rows) + k], _inverse[(c * Rows) + k]);
            }

            for (int k = 0; k < Rows; k++)
            {
                _basis[(c * Rows) + k] *= head;
                _inverse[(c * Rows) + k] *= head;
            }

            for (int r = 0; r < Rows; r++)
            {
                double factor = _basis[(r * Rows) + c];
                if (r == c || factor == 0)
                {
                    continue;
                }

                for (int k = 0; k < Rows; k++)
                {
                    _basis[(r * Rows) + k] -= factor * _basis[(c * Rows) + k];
                    _inverse[(r * Rows) + k] -= factor * _inverse[(c * Rows) + k];
                }
            }
        }

        for (int k = 0; k < Rows; k++)
        {
            _level[k] = Math.Max(0, _inverse[(k * Rows) + 3]);
            for (int j = 0; j < Rows; j++)
            {
                double sum = 0;
                for (int m = 0; m < Rows; m++)
                {
                    sum += _inverse[(k * Rows) + m] * _first[(m * Rows) + j];
                }

                _lexical[(k * Rows) + j] = sum;
            }
        }
    }

    private void Multipliers(ReadOnlySpan<double> heights, Span<double> plane)
    {
        plane.Clear();
        for (int k = 0; k < Rows; k++)
        {
            double cost = _sign[k] * heights[_index[k]];
            for (int j = 0; j < Rows; j++)
            {
                plane[j] += cost * _inverse[(k * Rows) + j];
            }
        }
    }

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

    private void Exchange(int enters, double sign, Span<double> step)
    {
        int leaves = -1;
        for (int k = 0; k < Rows; k++)
        {
            step[k] = (sign * (_inverse[k * Rows] + (_inverse[(k * Rows) + 1] * _x[enters]) + (_inverse[(k * Rows) + 2] * _y[enters]))) + _inverse[(k * Rows) + 3];
            if (step[k] > Tie && (leaves < 0 || LeavesBefore(k, leaves, step)))
            {
                leaves = k;
            }
        }

        // The levels add up to one, so a step in which none falls is rounding: the largest one then makes room.
        if (leaves < 0)
        {
            leaves = 0;
            for (int k = 1; k < Rows; k++)
            {
                leaves = step[k] > step[leaves] ? k : leaves;
            }
        }

        _index[leaves] = enters;
        _sign[leaves] = sign;
    }

    private bool LeavesBefore(int one, int other, ReadOnlySpan<double> step)
    {
        double first = _level[one] / step[one];
        double second = _level[other] / step[other];
        for (int j = 0; ; j++)
        {
            if (Math.Abs(first - second) > Tie * (Math.Abs(first) + Math.Abs(second) + Tie))
            {
                return first < second;
            }

            if (j == Rows)
            {
                return false;
            }

            first = _lexical[(one * Rows) + j] / step[one];
            second = _lexical[(other * Rows) + j] / step[other];
        }
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
