namespace PrinterMath.Tramming;

/// <summary>
/// Least trimmed squares: the coefficients with the least sum of the h smallest squared residuals, h = ⌊(n + p + 1)/2⌋, found by concentration
/// steps from exact fits of p readings; then least squares of the readings within 2.5·s₀, s₀ = 1.4826(1 + 3.8p/(n − p))·median|r|. The factor makes s₀ the standard
/// deviation of normal readings on average; it is from a simulation of this library's own for p = 3 and 4, n = 9 to 49 (the book's 1 + 5/(n − p) is for another estimate).
/// Rousseeuw, Leroy 1987, Robust Regression and Outlier Detection, chapter 1 (from memory); Rousseeuw, Van Driessen 2006, Computing LTS regression for large
/// data sets, Data Mining and Knowledge Discovery 12, 29 (from memory).
/// </summary>
internal sealed class TrimmedRegression
{
    private const double NormalConsistency = 1.482602218505602;
    private const double Cutoff = 2.5;
    private const double SmallSample = 3.8;

    /// <summary>Variance of a standard normal variable cut off at ±2.5: 1 − 2·2.5·φ(2.5)/(2Φ(2.5) − 1).</summary>
    private const double CutVariance = 0.911256;

    private const int MostStarts = 20_000;
    private const int RandomStarts = 500;
    private const int Kept = 10;
    private const int MostSteps = 200;

    private readonly double[] _design;
    private readonly double[] _response;
    private readonly int _columns;
    private readonly int _covered;
    private readonly double[] _residuals;
    private readonly double[] _squares;
    private readonly double[] _sorted;
    private readonly double[] _weights;

    private TrimmedRegression(double[] design, int columns, double[] response)
    {
        _design = design;
        _columns = columns;
        _response = response;
        _covered = (response.Length + columns + 1) / 2;
        _residuals = new double[response.Length];
        _squares = new double[response.Length];
        _sorted = new double[response.Length];
        _weights = new double[response.Length];
    }

    /// <summary>The raw estimate: coefficients and the h readings with the smallest residuals; null when no p readings fix the coefficients.</summary>
    internal static RobustWeights? Raw(double[] design, int columns, double[] response, int seed)
    {
        var search = new TrimmedRegression(design, columns, response);
        return search.Search(seed);
    }

    /// <summary>The reweighted estimate; null when the readings do not fix it or leave no scatter.</summary>
    internal static RobustWeights? Fit(double[] design, int columns, double[] response, int seed)
    {
        var search = new TrimmedRegression(design, columns, response);
        if (search.Search(seed) is not RobustWeights raw)
        {
            return null;
        }

        int n = response.Length;
        double[] coefficients = [.. raw.Coefficients];
        double largest = HuberRegression.Residuals(design, columns, response, coefficients, search._residuals);
        double scale = NormalConsistency * (1 + (SmallSample * columns / Math.Max(1, n - columns))) * HuberRegression.MedianAbsolute(search._residuals, search._sorted);
        double[] weights = new double[n];
        double limit = Math.Max(Cutoff * scale, 1e-13 * largest);
        int kept = 0;
        for (int i = 0; i < n; i++)
        {
            weights[i] = Math.Abs(search._residuals[i]) <= limit ? 1 : 0;
            kept += (int)weights[i];
        }

        if (!SmallSystem.TrySolve(design, columns, response, weights, coefficients))
        {
            return null;
        }

        HuberRegression.Residuals(design, columns, response, coefficients, search._residuals);
        double squares = 0;
        for (int i = 0; i < n; i++)
        {
            squares += weights[i] * search._residuals[i] * search._residuals[i];
        }

        return new RobustWeights(coefficients, scale, weights, kept > columns ? squares / (kept - columns) / CutVariance : 0);
    }

    private RobustWeights? Search(int seed)
    {
        int n = _response.Length;
        var best = new List<(double Objective, double[] Coefficients)>(Kept + 1);
        int[] subset = new int[_columns];
        if (ReadingSubsets.Count(n, _columns) <= MostStarts)
        {
            for (int i = 0; i < _columns; i++)
            {
                subset[i] = i;
            }

            do
            {
                Start(subset, best);
            }
            while (ReadingSubsets.Next(subset, n));
        }
        else
        {
            var random = new Random(seed);
            for (int start = 0; start < RandomStarts; start++)
            {
                ReadingSubsets.Draw(subset, n, random);
                Start(subset, best);
            }
        }

        return Finish(best);
    }

    /// <summary>Concentrates the best starts to the end.</summary>
    private RobustWeights? Finish(List<(double Objective, double[] Coefficients)> best)
    {
        double[]? found = null;
        double least = double.PositiveInfinity;
        foreach ((_, double[] coefficients) in best)
        {
            double now = Objective(coefficients);
            for (int step = 0; step < MostSteps && Concentrate(coefficients, out double next); step++)
            {
                if (next >= now)
                {
                    break;
                }

                now = next;
            }

            if (now < least)
            {
                least = now;
                found = coefficients;
            }
        }

        if (found is null)
        {
            return null;
        }

        Objective(found);
        return new RobustWeights(found, Math.Sqrt(least / _covered), [.. _weights], 0);
    }

    private void Start(int[] subset, List<(double Objective, double[] Coefficients)> best)
    {
        Array.Clear(_weights);
        foreach (int index in subset)
        {
            _weights[index] = 1;
        }

        double[] coefficients = new double[_columns];
        if (!SmallSystem.TrySolve(_design, _columns, _response, _weights, coefficients))
        {
            return;
        }

        Objective(coefficients);
        Concentrate(coefficients, out _);
        if (!Concentrate(coefficients, out double objective) || (best.Count == Kept && objective >= best[^1].Objective))
        {
            return;
        }

        int place = best.FindIndex(b => objective <= b.Objective);
        if (place >= 0 && best[place].Objective == objective)
        {
            return;
        }

        best.Insert(place < 0 ? best.Count : place, (objective, coefficients));
        if (best.Count > Kept)
        {
            best.RemoveAt(Kept);
        }
    }

    /// <summary>One concentration step: least squares of the h readings that fit best; the objective cannot grow.</summary>
    private bool Concentrate(double[] coefficients, out double objective)
    {
        bool solved = SmallSystem.TrySolve(_design, _columns, _response, _weights, coefficients);
        objective = solved ? Objective(coefficients) : double.PositiveInfinity;
        return solved;
    }

    /// <summary>Sum of the h smallest squared residuals; marks them by a weight of one.</summary>
    private double Objective(double[] coefficients)
    {
        HuberRegression.Residuals(_design, _columns, _response, coefficients, _residuals);
        for (int i = 0; i < _residuals.Length; i++)
        {
            _squares[i] = _residuals[i] * _residuals[i];
            _sorted[i] = _squares[i];
        }

        Array.Sort(_sorted);
        double limit = _sorted[_covered - 1];
        int left = _covered;
        double sum = 0;
        for (int pass = 0; pass < 2; pass++)
        {
            for (int i = 0; i < _squares.Length; i++)
            {
                bool takes = pass == 0 ? _squares[i] < limit : _squares[i] == limit && left > 0;
                if (pass == 0 || _squares[i] == limit)
                {
                    _weights[i] = takes ? 1 : 0;
                }

                if (takes)
                {
                    left--;
                    sum += _squares[i];
                }
            }
        }

        return sum;
    }
}
