namespace PrinterMath.Measurement;

/// <summary>Leverage and influence of the readings of one fit, from Q and the weighted residuals.</summary>
/// <remarks>
/// hᵢ = Σₖ qᵢₖ²; e₍ᵢ₎ = e/(1 − h); s₍ᵢ₎² = (S − e²/(1 − h))/(ν − 1).
/// Source: Cook, Weisberg 1982, Residuals and Influence in Regression, section 2.2; Allen 1974, The relationship between variable
/// selection and data augmentation and a method for prediction, Technometrics 16 (PRESS).
/// </remarks>
internal sealed class ReadingDiagnostics
{
    private readonly Orthogonalization _factor;
    private readonly DoubleDouble[] _residuals;
    private readonly DoubleDouble _squares;
    private readonly double? _sigma;
    private readonly int _freedom;
    private readonly double _leastFreedom;

    /// <param name="factor">Q of the weighted design.</param>
    /// <param name="residuals">Weighted residuals.</param>
    /// <param name="squares">Their sum of squares S.</param>
    /// <param name="sigma">Standard deviation of a weighted reading; null when unknown.</param>
    /// <param name="freedom">ν; zero when the residuals carry no scatter.</param>
    /// <param name="leastFreedom">Smallest 1 − h that counts.</param>
    internal ReadingDiagnostics(
        Orthogonalization factor, DoubleDouble[] residuals, DoubleDouble squares, double? sigma, int freedom, double leastFreedom)
    {
        _factor = factor;
        _residuals = residuals;
        _squares = squares;
        _sigma = sigma;
        _freedom = freedom;
        _leastFreedom = leastFreedom;
    }

    /// <summary>Σ(e/(1 − h))² of the weighted residuals; null when one reading is not checked by any other.</summary>
    internal double? Press { get; private set; }

    internal FittedReading[] Describe(ReadOnlySpan<double> response, DoubleDouble[] rowFactors, int responseExponent, List<Finding> findings)
    {
        int n = response.Length, p = _factor.Directions.Count;
        FittedReading[] readings = new FittedReading[n];
        DoubleDouble press = 0;
        bool complete = true;
        for (int i = 0; i < n; i++)
        {
            DoubleDouble leverage = 0;
            foreach (DoubleDouble[] direction in _factor.Directions)
            {
                leverage += direction[i] * direction[i];
            }

            DoubleDouble weighted = _residuals[i];
            DoubleDouble own = DoubleDouble.Scale(rowFactors.Length == 0 ? weighted : weighted / rowFactors[i], responseExponent);
            double fitted = (double)(response[i] - own);
            double h = Math.Clamp((double)leverage, 0, 1);
            DoubleDouble left = 1.0 - leverage;
            if (left.High < _leastFreedom)
            {
                complete = false;
                readings[i] = new FittedReading(response[i], fitted, (double)own, 1);
                if (n > p)
                {
                    findings.Add(LinearFitFindings.Unchecked(i));
                }

                continue;
            }

            DoubleDouble without = weighted / left;
            press += without * without;
            double rest = (double)left;
            double? standardized = _sigma is double sigma && sigma > 0 ? weighted.High / (sigma * Math.Sqrt(rest)) : null;
            readings[i] = new FittedReading(response[i], fitted, (double)own, h)
            {
                LeaveOneOutResidual = (double)(own / left),
                StandardizedResidual = standardized,
                StudentizedResidual = Studentized(weighted, left),
                CookDistance = standardized is double r ? r * r * h / (p * rest) : null,
            };
        }

        Press = complete ? (double)press : null;
        return readings;
    }

    private double? Studentized(DoubleDouble residual, DoubleDouble left)
    {
        if (_freedom < 2)
        {
            return null;
        }

        DoubleDouble others = _squares - (residual * residual / left);
        return others.High > 1e-24 * _squares.High
            ? (double)residual / Math.Sqrt((double)others / (_freedom - 1) * (double)left)
            : null;
    }
}
