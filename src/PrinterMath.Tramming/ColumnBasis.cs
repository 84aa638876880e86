namespace PrinterMath.Tramming;

/// <summary>
/// Orthonormal columns that grow one by one, by modified Gram-Schmidt with reorthogonalisation; rows may first be rid of a free weighted mean for each group.
/// Björck 1996, Numerical Methods for Least Squares Problems, 2.4 (from memory).
/// </summary>
internal sealed class ColumnBasis
{
    /// <summary>A column that keeps less than this fraction of its length depends on the others.</summary>
    private const double Dependent = 1e-7;

    private readonly List<double[]> _columns = [];
    private readonly int[] _group;
    private readonly double[] _rootWeight;
    private readonly double[] _groupWeight;

    /// <summary>Groups number the first rows from 0; rows beyond them, and all when there are no groups, stay as they are.</summary>
    internal ColumnBasis(int[] group, double[] rootWeight, int groups)
    {
        _group = groups > 0 ? group : [];
        _rootWeight = rootWeight;
        _groupWeight = new double[groups];
        for (int i = 0; i < _group.Length; i++)
        {
            _groupWeight[group[i]] += rootWeight[i] * rootWeight[i];
        }
    }

    internal int Rank => _groupWeight.Length + _columns.Count;

    internal static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }

    internal ColumnBasis Copy()
    {
        var copy = new ColumnBasis(_group, _rootWeight, _groupWeight.Length);
        copy._columns.AddRange(_columns);
        return copy;
    }

    /// <summary>Length of what is new in a column; zero, and nothing is added, when it depends on the others.</summary>
    internal double Add(ReadOnlySpan<double> column)
    {
        double[] rest = column.ToArray();
        double before = Math.Sqrt(Dot(rest, rest));
        Remove(rest);
        Remove(rest);
        double after = Math.Sqrt(Dot(rest, rest));
        if (!(after > Dependent * before))
        {
            return 0;
        }

        for (int i = 0; i < rest.Length; i++)
        {
            rest[i] /= after;
        }

        _columns.Add(rest);
        return after;
    }

    internal void Remove(Span<double> vector)
    {
        if (_groupWeight.Length > 0)
        {
            Center(vector);
        }

        foreach (double[] column in _columns)
        {
            double along = Dot(column, vector);
            for (int i = 0; i < column.Length; i++)
            {
                vector[i] -= along * column[i];
            }
        }
    }

    private void Center(Span<double> vector)
    {
        double[] mean = new double[_groupWeight.Length];
        for (int i = 0; i < _group.Length; i++)
        {
            mean[_group[i]] += _rootWeight[i] * vector[i];
        }

        for (int i = 0; i < _group.Length; i++)
        {
            vector[i] -= _rootWeight[i] * mean[_group[i]] / _groupWeight[_group[i]];
        }
    }
}
