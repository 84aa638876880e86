using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace PrinterMath.Resonance;

/// <summary>Least squares of a level and several decaying oscillations, by Levenberg's and Marquardt's damped Gauss-Newton steps.</summary>
/// <remarks>Source: D. W. Marquardt, 1963, J. SIAM 11(2), 431-441 (from memory); steps are scaled by the diagonal of the normal matrix.</remarks>
internal sealed class DecayFit
{
    private const int MostSteps = 40;
    private const double Converged = 1e-10;

    private DecayFit(DecayTerm[] terms, double level, double[] residuals, Matrix<double> inverse)
    {
        Terms = terms;
        Level = level;
        Residuals = residuals;
        Inverse = inverse;
    }

    internal DecayTerm[] Terms { get; }

    internal double Level { get; }

    internal double[] Residuals { get; }

    /// <summary>(JᵀJ)⁻¹, level first, then decay, angle, cosine, sine of each term: the covariance for unit noise variance.</summary>
    internal Matrix<double> Inverse { get; }

    /// <summary>The fit, or null when the normal matrix is singular.</summary>
    internal static DecayFit? Run(ReadOnlySpan<double> samples, IReadOnlyList<DecayTerm> start)
    {
        double[] x = Pack(start, Mean(samples));
        double[] residuals = new double[samples.Length];
        var normal = Matrix<double>.Build.Dense(x.Length, x.Length);
        var gradient = Vector<double>.Build.Dense(x.Length);
        double sum = Evaluate(samples, x, residuals, normal, gradient);
        double damping = 1e-3;
        for (int step = 0; step < MostSteps && damping < 1e12; step++)
        {
            if (TryStep(normal, gradient, damping) is not { } change)
            {
                damping *= 10;
                continue;
            }

            double[] trial = [.. x.Select((value, i) => value + change[i])];
            double[] trialResiduals = new double[samples.Length];
            double trialSum = Sum(samples, trial, trialResiduals);
            if (trialSum > sum || !double.IsFinite(trialSum))
            {
                damping *= 10;
                continue;
            }

            double gain = sum - trialSum;
            x = trial;
            sum = Evaluate(samples, x, residuals, normal, gradient);
            damping = Math.Max(damping / 10, 1e-12);
            if (gain <= Converged * sum)
            {
                break;
            }
        }

        return TryInvert(normal) is { } inverse ? new DecayFit(Unpack(x), x[0], residuals, inverse) : null;
    }

    private static double[] Pack(IReadOnlyList<DecayTerm> terms, double level) =>
        [level, .. terms.SelectMany(t => new[] { t.Decay, t.Angle, t.Cosine, t.Sine })];

    private static DecayTerm[] Unpack(double[] x) =>
        [.. Enumerable.Range(0, (x.Length - 1) / DecayTerm.Parameters).Select(m => new DecayTerm(x[1 + (4 * m)], x[2 + (4 * m)], x[3 + (4 * m)], x[4 + (4 * m)]))];

    private static double Sum(ReadOnlySpan<double> samples, double[] x, double[] residuals)
    {
        double sum = 0;
        DecayTerm[] terms = Unpack(x);
        for (int n = 0; n < samples.Length; n++)
        {
            double model = x[0];
            foreach (DecayTerm term in terms)
            {
                (double s, double c) = Math.SinCos(term.Angle * n);
                model += Math.Exp(-term.Decay * n) * ((term.Cosine * c) + (term.Sine * s));
            }

            residuals[n] = samples[n] - model;
            sum += residuals[n] * residuals[n];
        }

        return sum;
    }

    private static double Evaluate(ReadOnlySpan<double> samples, double[] x, double[] residuals, Matrix<double> normal, Vector<double> gradient)
    {
        int size = x.Length;
        double[] row = new double[size];
        double[] sums = new double[size * size];
        double[] slopes = new double[size];
        DecayTerm[] terms = Unpack(x);
        double total = 0;
        row[0] = 1;
        for (int n = 0; n < samples.Length; n++)
        {
            double model = x[0];
            for (int m = 0; m < terms.Length; m++)
            {
                DecayTerm t = terms[m];
                (double s, double c) = Math.SinCos(t.Angle * n);
                double fade = Math.Exp(-t.Decay * n);
                double value = fade * ((t.Cosine * c) + (t.Sine * s));
                int at = 1 + (4 * m);
                row[at] = -n * value;
                row[at + 1] = n * fade * ((t.Sine * c) - (t.Cosine * s));
                row[at + 2] = fade * c;
                row[at + 3] = fade * s;
                model += value;
            }

            double residual = samples[n] - model;
            residuals[n] = residual;
            total += residual * residual;
            for (int i = 0; i < size; i++)
            {
                slopes[i] += row[i] * residual;
                for (int j = 0; j <= i; j++)
                {
                    sums[(i * size) + j] += row[i] * row[j];
                }
            }
        }

        for (int i = 0; i < size; i++)
        {
            gradient[i] = slopes[i];
            for (int j = 0; j <= i; j++)
            {
                normal[i, j] = normal[j, i] = sums[(i * size) + j];
            }
        }

        return total;
    }

    private static Vector<double>? TryStep(Matrix<double> normal, Vector<double> gradient, double damping)
    {
        double[] scale = Scale(normal);
        Matrix<double> scaled = Scaled(normal, scale, damping);
        return TryFactor(scaled) is { } factor
            ? Vector<double>.Build.DenseOfEnumerable(factor.Solve(gradient.MapIndexed((i, g) => g * scale[i])).Select((step, i) => step * scale[i]))
            : null;
    }

    private static Matrix<double>? TryInvert(Matrix<double> normal)
    {
        double[] scale = Scale(normal);
        return TryFactor(Scaled(normal, scale, 0)) is { } factor
            ? factor.Solve(Matrix<double>.Build.DenseIdentity(scale.Length)).MapIndexed((i, j, value) => value * scale[i] * scale[j])
            : null;
    }

    private static Cholesky<double>? TryFactor(Matrix<double> matrix)
    {
        try
        {
            return matrix.Cholesky();
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static double[] Scale(Matrix<double> normal) =>
        [.. Enumerable.Range(0, normal.RowCount).Select(i => normal[i, i] > 0 ? 1 / Math.Sqrt(normal[i, i]) : 1)];

    private static Matrix<double> Scaled(Matrix<double> normal, double[] scale, double damping) =>
        normal.MapIndexed((i, j, value) => (value * scale[i] * scale[j]) + (i == j ? damping : 0));

    private static double Mean(ReadOnlySpan<double> samples)
    {
        double sum = 0;
        foreach (double value in samples)
        {
            sum += value;
        }

        return sum / samples.Length;
    }
}
