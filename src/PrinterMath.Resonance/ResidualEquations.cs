using System.Numerics;

namespace PrinterMath.Resonance;

/// <summary>
/// As many equations as unknowns for a sequence whose first impulse is at zero. Unknowns: amplitudes (unless they are given), times of the impulses after the first, frequencies of
/// zeros and extremes. E = exp(−ζωt_n)·ΣA·exp(λr·t), λ = 2π(ζ + i√(1 − ζ²)), so that V = |E|; derivatives are exact.
/// </summary>
internal sealed class ResidualEquations(int impulses, ResidualCondition[] conditions, double tolerance, double[]? givenAmplitudes = null)
{
    private readonly int _timesAt = givenAmplitudes is null ? impulses : 0;
    private readonly Complex[] _terms = new Complex[impulses];

    /// <summary>Share of each condition's damping that holds, from 0 to 1.</summary>
    internal double DampingShare { get; set; } = 1;

    private int FrequenciesAt => _timesAt + impulses - 1;

    internal double[] Amplitudes(double[] x) => givenAmplitudes ?? x[..impulses];

    internal double[] Times(double[] x) => [0, .. x[_timesAt..FrequenciesAt]];

    /// <summary>Whether times rise and amplitudes are positive, unless they are given.</summary>
    internal bool IsSequence(double[] x)
    {
        double[] times = Times(x);
        for (int i = 1; i < times.Length; i++)
        {
            if (!(times[i] > times[i - 1]))
            {
                return false;
            }
        }

        return givenAmplitudes is not null || Array.TrueForAll(Amplitudes(x), a => a > 0);
    }

    internal void Evaluate(double[] x, double[] values, double[,] slopes)
    {
        Array.Clear(slopes);
        double[] amplitudes = Amplitudes(x);
        double[] times = Times(x);
        int row = 0;
        if (givenAmplitudes is null)
        {
            values[row] = amplitudes.Sum() - 1;
            for (int i = 0; i < impulses; i++)
            {
                slopes[row, i] = 1;
            }

            row++;
        }

        foreach (ResidualCondition condition in conditions)
        {
            Fill(condition, x, amplitudes, times, values, slopes, row);
            row += condition.Equations;
        }
    }

    private void Fill(ResidualCondition condition, double[] x, double[] a, double[] t, double[] values, double[,] slopes, int row)
    {
        double zeta = condition.Damping * DampingShare;
        double root = Math.Sqrt(1 - (zeta * zeta));
        if (condition.Kind == ConditionKind.LastAtDampedPeriod)
        {
            values[row] = t[^1] - (1 / root);
            slopes[row, FrequenciesAt - 1] = 1;
            return;
        }

        double r = condition.Unknown < 0 ? condition.Frequency : x[FrequenciesAt + condition.Unknown];
        var lambda = new Complex(2 * Math.PI * zeta, 2 * Math.PI * root);
        double fade = 2 * Math.PI * zeta;
        Complex e = 0, d = 0, dd = 0;
        for (int i = 0; i < impulses; i++)
        {
            _terms[i] = Complex.Exp((lambda * r * t[i]) - (fade * r * t[^1]));
            Complex rate = (lambda * t[i]) - (fade * t[^1]);
            e += a[i] * _terms[i];
            d += a[i] * rate * _terms[i];
            dd += a[i] * rate * rate * _terms[i];
        }

        Put(condition.Kind, e, d, values, row);
        void Slope(int column, Complex ofE, Complex ofD) => PutSlope(condition.Kind, e, d, ofE, ofD, slopes, row, column);
        for (int i = 0; i < impulses; i++)
        {
            Complex rate = (lambda * t[i]) - (fade * t[^1]);
            if (givenAmplitudes is null)
            {
                Slope(i, _terms[i], rate * _terms[i]);
            }

            if (i > 0)
            {
                Complex ofE = a[i] * lambda * r * _terms[i];
                Complex ofD = a[i] * lambda * _terms[i] * (1 + (rate * r));
                bool last = i == impulses - 1;
                Slope(_timesAt + i - 1, last ? ofE - (fade * r * e) : ofE, last ? ofD - (fade * e) - (fade * r * d) : ofD);
            }
        }

        if (condition.Unknown >= 0)
        {
            Slope(FrequenciesAt + condition.Unknown, d, dd);
        }
    }

    private void Put(ConditionKind kind, Complex e, Complex d, double[] values, int row)
    {
        switch (kind)
        {
            case ConditionKind.Zero:
                (values[row], values[row + 1]) = (e.Real, e.Imaginary);
                break;
            case ConditionKind.FlatZero:
                (values[row], values[row + 1]) = (d.Real, d.Imaginary);
                break;
            case ConditionKind.Level:
                values[row] = (Inner(e, e) / (tolerance * tolerance)) - 1;
                break;
            default:
                values[row] = Inner(e, d) / (tolerance * tolerance);
                break;
        }
    }

    private void PutSlope(ConditionKind kind, Complex e, Complex d, Complex ofE, Complex ofD, double[,] slopes, int row, int column)
    {
        switch (kind)
        {
            case ConditionKind.Zero:
                (slopes[row, column], slopes[row + 1, column]) = (ofE.Real, ofE.Imaginary);
                break;
            case ConditionKind.FlatZero:
                (slopes[row, column], slopes[row + 1, column]) = (ofD.Real, ofD.Imaginary);
                break;
            case ConditionKind.Level:
                slopes[row, column] = 2 * Inner(e, ofE) / (tolerance * tolerance);
                break;
            default:
                slopes[row, column] = (Inner(ofE, d) + Inner(e, ofD)) / (tolerance * tolerance);
                break;
        }
    }

    private static double Inner(Complex a, Complex b) => (a.Real * b.Real) + (a.Imaginary * b.Imaginary);
}
