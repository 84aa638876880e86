namespace PrinterMath.Measurement;

/// <summary>Scales, weights and factors one least-squares problem and gathers what the fit reports.</summary>
internal sealed class LinearFitSolver
{
    /// <summary>The factor and the solution lose a few units in the 106th bit for each reading.</summary>
    private const double WorkRounding = 1.0 / (1L << 49) / (1L << 49);

    /// <summary>1 − h below this: no other reading checks this one.</summary>
    private const double LeastFreedom = 1e-12;

    private readonly DoubleDouble[][] _columns;
    private readonly int[] _exponents;
    private readonly double _rounding;
    private readonly LinearFitOptions _options;
    private readonly int _first;
    private readonly List<Finding> _findings = [];

    /// <param name="columns">Columns without the constant; consumed.</param>
    /// <param name="exponents">The true column j is columns[j]·2^exponents[j].</param>
    /// <param name="rounding">Relative rounding of the entries.</param>
    /// <param name="options">Checked options.</param>
    internal LinearFitSolver(DoubleDouble[][] columns, int[] exponents, double rounding, LinearFitOptions options)
    {
        _first = options.Intercept ? 1 : 0;
        _columns = options.Intercept ? [[], .. columns] : columns;
        _exponents = options.Intercept ? [0, .. exponents] : exponents;
        _rounding = rounding;
        _options = options;
    }

    internal LinearFit Solve(ReadOnlySpan<double> response, ReadOnlySpan<double> standardUncertainties)
    {
        int n = response.Length, p = _columns.Length;
        if (n < p)
        {
            return Indeterminate(n, LinearFitFindings.TooFewReadings(n, p));
        }

        if (_options.Intercept)
        {
            _columns[0] = new DoubleDouble[n];
            Array.Fill(_columns[0], 1);
        }

        for (int j = 0; j < p; j++)
        {
            if (!TryScale(_columns[j], ref _exponents[j]))
            {
                return Indeterminate(n, LinearFitFindings.ZeroColumn(j - _first));
            }
        }

        DoubleDouble[] scaledResponse = new DoubleDouble[n];
        for (int i = 0; i < n; i++)
        {
            scaledResponse[i] = response[i];
        }

        int responseExponent = 0;
        TryScale(scaledResponse, ref responseExponent);
        DoubleDouble[] rowFactors = RowFactors(standardUncertainties, out int uncertaintyExponent);
        Weigh(rowFactors, scaledResponse);

        Orthogonalization factor = Orthogonalization.Of(_columns, 2 * _rounding);
        if (factor.VanishingColumn >= 0)
        {
            return Indeterminate(n, LinearFitFindings.Dependent(factor, _first));
        }

        DoubleDouble[][] inverse = factor.InverseTriangle();
        DesignCondition condition = DesignCondition.Of(factor, inverse, _first);
        if (condition.Number * _rounding > 1.0 / 16)
        {
            return Indeterminate(n, LinearFitFindings.Dependent(condition, _first));
        }

        if (condition.Number * _rounding > 1e-8)
        {
            _findings.Add(LinearFitFindings.PoorCondition(condition.Number));
        }

        double responseNorm = (double)Orthogonalization.Norm(scaledResponse);
        DoubleDouble[] components = factor.Project(scaledResponse);
        DoubleDouble[] coefficients = factor.BackSubstitute(components, p);
        double noise = responseNorm;
        for (int j = 0; j < p; j++)
        {
            noise += Math.Abs(coefficients[j].High) * factor.Norms[j];
        }

        bool absolute = !standardUncertainties.IsEmpty && _options.Uncertainty == ResponseUncertainty.Absolute;
        bool exact = n == p || Orthogonalization.Norm(scaledResponse).High <= WorkRounding * n * noise;
        if (exact)
        {
            Array.Clear(scaledResponse);
        }

        DoubleDouble squares = SumOfSquares(scaledResponse);
        double? scatter = n > p ? Math.Sqrt((double)squares / (n - p)) : null;
        double? sigma = absolute ? Math.ScaleB(1, uncertaintyExponent - responseExponent) : scatter;
        Describe(n, p, exact, absolute);

        var solution = new LinearSolution(coefficients, inverse, _exponents, responseExponent, sigma)
        {
            ConditionNumber = condition.Number,
            ResidualStandardDeviation = scatter is double s ? Math.ScaleB(s, responseExponent - uncertaintyExponent) : null,
            ChiSquare = absolute ? Math.ScaleB((double)squares, 2 * (responseExponent - uncertaintyExponent)) : null,
            RSquared = RSquared(response, components, squares),
            UncertaintyDegreesOfFreedom = absolute ? double.PositiveInfinity : n - p,
        };
        ReadingDiagnostics diagnostics = new(factor, scaledResponse, squares, sigma, exact ? 0 : n - p, LeastFreedom);
        FittedReading[] readings = diagnostics.Describe(response, rowFactors, responseExponent, _findings);
        solution.Readings = readings;
        solution.Press = diagnostics.Press is double press ? Math.ScaleB(press, 2 * (responseExponent - uncertaintyExponent)) : null;
        return solution.IsRepresentable
            ? new LinearFit(solution, _findings, n, p, _options.Intercept)
            : Indeterminate(n, LinearFitFindings.OutOfRange());
    }

    private LinearFit Indeterminate(int n, Finding finding) => new(null, [.. _findings, finding], n, _columns.Length, _options.Intercept);

    private void Describe(int n, int p, bool exact, bool absolute)
    {
        if (n == p && !absolute)
        {
            _findings.Add(LinearFitFindings.NoFreedom(p));
        }
        else if (n > p && exact)
        {
            _findings.Add(LinearFitFindings.NoScatter());
        }
    }

    private double? RSquared(ReadOnlySpan<double> response, DoubleDouble[] components, DoubleDouble squares)
    {
        double without = _options.Intercept ? response[0] : 0;
        bool flat = true;
        foreach (double y in response)
        {
            flat &= y == without;
        }

        DoubleDouble explained = SumOfSquares(components.AsSpan(_first));
        DoubleDouble total = explained + squares;
        return flat || total.High <= 0 ? null : Math.Clamp((double)(explained / total), 0, 1);
    }

    private void Weigh(DoubleDouble[] rowFactors, DoubleDouble[] response)
    {
        for (int i = 0; i < rowFactors.Length; i++)
        {
            response[i] *= rowFactors[i];
            foreach (DoubleDouble[] column in _columns)
            {
                column[i] *= rowFactors[i];
            }
        }
    }

    /// <summary>2ᵉ/uᵢ with the exponent e of the smallest u; empty when none are given.</summary>
    private static DoubleDouble[] RowFactors(ReadOnlySpan<double> standardUncertainties, out int exponent)
    {
        exponent = 0;
        if (standardUncertainties.IsEmpty)
        {
            return [];
        }

        double smallest = double.PositiveInfinity;
        foreach (double u in standardUncertainties)
        {
            smallest = Math.Min(smallest, u);
        }

        exponent = Math.ILogB(smallest);
        DoubleDouble[] factors = new DoubleDouble[standardUncertainties.Length];
        for (int i = 0; i < factors.Length; i++)
        {
            factors[i] = (DoubleDouble)1.0 / Math.ScaleB(standardUncertainties[i], -exponent);
        }

        return factors;
    }

    /// <summary>Brings the largest entry between 1 and 2 by a power of two; false when all are zero.</summary>
    private static bool TryScale(DoubleDouble[] vector, ref int exponent)
    {
        double largest = 0;
        foreach (DoubleDouble x in vector)
        {
            largest = Math.Max(largest, Math.Abs(x.High));
        }

        if (largest == 0)
        {
            return false;
        }

        int shift = Math.ILogB(largest);
        exponent += shift;
        for (int i = 0; i < vector.Length; i++)
        {
            vector[i] = DoubleDouble.Scale(vector[i], -shift);
        }

        return true;
    }

    private static DoubleDouble SumOfSquares(ReadOnlySpan<DoubleDouble> vector)
    {
        DoubleDouble sum = 0;
        foreach (DoubleDouble x in vector)
        {
            sum += x * x;
        }

        return sum;
    }
}
