namespace PrinterMath.Tramming;

/// <summary>Four signed points that fix a plane at equal distances from them: a basis of the dual of the Chebyshev fit, feasible for any heights.</summary>
internal sealed class ReferenceBasis(double[] x, double[] y)
{
    internal const int Rows = 4;

    private const double Tie = 1e-11;

    private readonly double[] _basis = new double[Rows * Rows];
    private readonly double[] _inverse = new double[Rows * Rows];
    private readonly double[] _lexical = new double[Rows * Rows];
    private readonly double[] _first = new double[Rows * Rows];
    private readonly int[] _index = new int[Rows];
    private readonly double[] _sign = new double[Rows];
    private readonly double[] _level = new double[Rows];

    internal ReadOnlySpan<int> Points => _index;

    internal ReadOnlySpan<double> Signs => _sign;

    internal ReadOnlySpan<double> Levels => _level;

    internal bool Holds(int point, double sign)
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
    internal void Begin(ReadOnlySpan<int> start)
    {
        _index[0] = start[0];
        _index[1] = start[0];
        _index[2] = start[1];
        _index[3] = start[2];
        for (int k = 0; k < Rows; k++)
        {
            _sign[k] = k == 1 ? -1 : 1;
            Column(k, _first);
        }
    }

    /// <summary>Inverse of the reference, levels λ (its last column), and the rows that order ties.</summary>
    internal void Invert()
    {
        for (int k = 0; k < Rows; k++)
        {
            Column(k, _basis);
        }

        Eliminate();
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

    internal void Multipliers(ReadOnlySpan<double> heights, Span<double> plane)
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

    internal void Exchange(int enters, double sign, Span<double> step)
    {
        int leaves = -1;
        for (int k = 0; k < Rows; k++)
        {
            step[k] = (sign * (_inverse[k * Rows] + (_inverse[(k * Rows) + 1] * x[enters]) + (_inverse[(k * Rows) + 2] * y[enters]))) + _inverse[(k * Rows) + 3];
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

    private void Column(int k, double[] matrix)
    {
        double s = _sign[k];
        matrix[k] = s;
        matrix[Rows + k] = s * x[_index[k]];
        matrix[(2 * Rows) + k] = s * y[_index[k]];
        matrix[(3 * Rows) + k] = 1;
    }

    /// <summary>Gauss and Jordan's elimination with row exchange.</summary>
    private void Eliminate()
    {
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
    }
}
