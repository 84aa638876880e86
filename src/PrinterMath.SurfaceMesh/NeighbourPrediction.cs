using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;
using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh;

/// <summary>Each probed node beside what a quadratic surface through its neighbours predicts.</summary>
internal sealed class NeighbourPrediction
{
    private const int Terms = 6;

    /// <summary>The window of columns and rows: three wide, wider where nodes are missing. Near ones bend away least.</summary>
    private const int Narrowest = 3;
    private const int Widest = 7;

    /// <summary>Smallest over largest diagonal element of R that still tells the terms apart.</summary>
    private const double Dependent = 1e-6;

    private readonly GridNodes _nodes;
    private readonly bool[] _sound;
    private readonly double[] _expected;
    private readonly double[] _errors;
    private readonly int[] _widths;

    internal NeighbourPrediction(GridNodes nodes)
    {
        _nodes = nodes;
        _sound = [.. nodes.Readings.Select(n => n > 0)];
        _expected = new double[_sound.Length];
        _errors = new double[_sound.Length];
        _widths = new int[_sound.Length];
        for (int node = 0; node < _sound.Length; node++)
        {
            Predict(node);
        }
    }

    internal double Expected(int node) => _expected[node];

    internal double Error(int node) => Math.Abs(_errors[node]);

    /// <summary>The sound node that is off most, in units of one reading.</summary>
    internal (int Node, double Error) Worst()
    {
        int worst = 0;
        for (int node = 0; node < _errors.Length; node++)
        {
            worst = Math.Abs(_errors[node]) > Math.Abs(_errors[worst]) ? node : worst;
        }

        return (worst, Math.Abs(_errors[worst]));
    }

    internal double Scale()
    {
        double[] errors = [.. _errors.Where((_, node) => _sound[node]).Select(Math.Abs)];
        double known = _nodes.HasUncertainty ? Median.Of([.. _nodes.StandardUncertainties.Where((_, node) => _sound[node])]) : 0;
        return Math.Max(MedianAbsoluteDeviation.NormalConsistency * Median.Of(errors), known);
    }

    internal void SetAside(int node) => Set(node, false);

    internal void Restore(int node) => Set(node, true);

    private void Set(int node, bool sound)
    {
        _sound[node] = sound;
        int columns = _nodes.X.Count;
        for (int other = 0; other < _sound.Length; other++)
        {
            int reach = Math.Max(_widths[other], Narrowest);
            if (Math.Abs((other % columns) - (node % columns)) < reach && Math.Abs((other / columns) - (node / columns)) < reach)
            {
                Predict(other);
            }
        }
    }

    private void Predict(int node)
    {
        for (int width = Narrowest; _sound[node] && width <= Widest; width++)
        {
            _widths[node] = width;
            if (TryPredict(node, Around(node, width)))
            {
                return;
            }
        }

        _errors[node] = 0;
    }

    /// <summary>Sound nodes of a window that holds the node and lies within the grid.</summary>
    private List<int> Around(int node, int width)
    {
        int columns = _nodes.X.Count, rows = _nodes.Y.Count;
        int left = Math.Clamp((node % columns) - (width / 2), 0, Math.Max(0, columns - width));
        int front = Math.Clamp((node / columns) - (width / 2), 0, Math.Max(0, rows - width));
        return
        [
            .. from row in Enumerable.Range(front, Math.Min(width, rows))
               from column in Enumerable.Range(left, Math.Min(width, columns))
               let other = _nodes.Index(column, row)
               where other != node && _sound[other]
               select other,
        ];
    }

    /// <summary>Weights of the prediction at the node: the first row of the pseudo-inverse of the design, w = Q R⁻ᵀ e₁.</summary>
    private bool TryPredict(int node, List<int> around)
    {
        if (around.Count <= Terms)
        {
            return false;
        }

        int columns = _nodes.X.Count;
        double x = _nodes.X.Nodes[node % columns], y = _nodes.Y.Nodes[node / columns];
        double[] dx = [.. around.Select(k => _nodes.X.Nodes[k % columns] - x)], dy = [.. around.Select(k => _nodes.Y.Nodes[k / columns] - y)];
        double width = dx.Max(Math.Abs), depth = dy.Max(Math.Abs);
        QR<double> factors = Matrix<double>.Build.Dense(around.Count, Terms, (i, t) => Term(t, dx[i] / width, dy[i] / depth)).QR(QRMethod.Thin);
        double[] diagonal = [.. factors.R.Diagonal().Select(Math.Abs)];
        if (!(diagonal.Min() > Dependent * diagonal.Max()))
        {
            return false;
        }

        Vector<double> weights = factors.Q.Multiply(factors.R.Transpose().Solve(Vector<double>.Build.Dense(Terms, t => t == 0 ? 1 : 0)));
        double off = around.Select((k, i) => weights[i] * (_nodes.Heights[k] - _nodes.Heights[node])).Sum();
        _expected[node] = _nodes.Heights[node] + off;
        _errors[node] = -off / Math.Sqrt(1 + weights.DotProduct(weights));
        return true;
    }

    private static double Term(int term, double x, double y) => term switch
    {
        0 => 1,
        1 => x,
        2 => y,
        3 => x * x,
        4 => x * y,
        _ => y * y,
    };
}
