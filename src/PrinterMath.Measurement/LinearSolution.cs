namespace PrinterMath.Measurement;

/// <summary>A determinate least-squares solution, in doubled precision and scaled by powers of two.</summary>
internal sealed class LinearSolution
{
    private readonly DoubleDouble[] _scaled;
    private readonly DoubleDouble[][] _inverse;
    private readonly int[] _exponents;
    private readonly int _responseExponent;
    private readonly double? _sigma;
    private readonly double[] _roots;

    internal LinearSolution(DoubleDouble[] scaled, DoubleDouble[][] inverse, int[] exponents, int responseExponent, double? sigma)
    {
        _scaled = scaled;
        _inverse = inverse;
        _exponents = exponents;
        _responseExponent = responseExponent;
        _sigma = sigma;
        int p = scaled.Length;
        Coefficients = new double[p];
        _roots = new double[p];
        StandardErrors = sigma is null ? null : new double[p];
        for (int i = 0; i < p; i++)
        {
            Coefficients[i] = Math.ScaleB((double)scaled[i], responseExponent - exponents[i]);
            _roots[i] = Math.Sqrt((double)Cofactor(i, i));
            StandardErrors?[i] = Math.ScaleB(_roots[i] * sigma.GetValueOrDefault(), responseExponent - exponents[i]);
        }
    }

    internal double[] Coefficients { get; }

    internal double[]? StandardErrors { get; }

    internal double ConditionNumber { get; init; }

    internal double? ResidualStandardDeviation { get; init; }

    internal double? ChiSquare { get; init; }

    internal double? RSquared { get; init; }

    internal double UncertaintyDegreesOfFreedom { get; init; }

    internal double? Press { get; set; }

    internal FittedReading[] Readings { get; set; } = [];

    internal bool IsRepresentable =>
        Coefficients.All(double.IsFinite)
        && (StandardErrors is null || StandardErrors.All(se => double.IsFinite(se * se)))
        && Readings.All(r => double.IsFinite(r.FittedValue) && double.IsFinite(r.StandardizedResidual ?? 0))
        && double.IsFinite(ResidualStandardDeviation ?? 0)
        && double.IsFinite(ChiSquare ?? 0)
        && double.IsFinite(Press ?? 0);

    internal double Correlation(int i, int j) =>
        i == j ? 1 : Math.Clamp((double)Cofactor(i, j) / (_roots[i] * _roots[j]), -1, 1);

    /// <summary>Value and standard uncertainty for a row whose true entry j is row[j]·2^exponents[j].</summary>
    internal (double Value, double? StandardUncertainty) Predict(DoubleDouble[] row, ReadOnlySpan<int> exponents)
    {
        int p = row.Length;
        DoubleDouble value = 0;
        DoubleDouble[] scaled = new DoubleDouble[p];
        for (int j = 0; j < p; j++)
        {
            scaled[j] = DoubleDouble.Scale(row[j], exponents[j] - _exponents[j]);
            value += scaled[j] * _scaled[j];
        }

        DoubleDouble squares = 0;
        for (int k = 0; k < p; k++)
        {
            DoubleDouble component = 0;
            for (int j = 0; j <= k; j++)
            {
                component += _inverse[k][j] * scaled[j];
            }

            squares += component * component;
        }

        double? u = _sigma is double sigma
            ? Math.ScaleB(sigma * Math.Sqrt((double)squares), _responseExponent)
            : null;
        return (Math.ScaleB((double)value, _responseExponent), u);
    }

    /// <summary>Entry (i, j) of (RᵀR)⁻¹ = R⁻¹R⁻ᵀ.</summary>
    private DoubleDouble Cofactor(int i, int j)
    {
        DoubleDouble sum = 0;
        for (int k = Math.Max(i, j); k < _inverse.Length; k++)
        {
            sum += _inverse[k][i] * _inverse[k][j];
        }

        return sum;
    }
}
