using PrinterMath.Measurement;

namespace PrinterMath.Extrusion;

/// <summary>What is known of µ and σ after some trials.</summary>
internal sealed class FitPosterior
{
    internal const double Coverage = 0.95;
    private readonly FitGrid _grid;
    private readonly double[] _weights;
    private readonly double _scale;
    private readonly double[] _marginal;

    /// <summary>The weights, once they are scaled, sum to one.</summary>
    internal FitPosterior(FitGrid grid, double[] weights, double scale)
    {
        _grid = grid;
        _weights = weights;
        _scale = scale;
        _marginal = new double[grid.Flows.Length];
        int n = _marginal.Length;
        for (int s = 0; s < grid.Transitions.Length; s++)
        {
            for (int j = 0; j < n; j++)
            {
                _marginal[j] += weights[(s * n) + j] * scale;
            }
        }
    }

    internal double HalfWidth => (Quantile((1 + Coverage) / 2) - Quantile((1 - Coverage) / 2)) / 2;

    /// <summary>Probability that µ lies outside two limits.</summary>
    internal double OutsideProbability(double lower, double upper)
    {
        double sum = 0;
        for (int j = 0; j < _marginal.Length; j++)
        {
            sum += _grid.Flows[j] < lower || _grid.Flows[j] > upper ? _marginal[j] : 0;
        }

        return sum;
    }

    internal FitEstimate Estimate()
    {
        (double mean, double deviation) = Moments(_grid.Flows, _marginal);
        double[] transitions = new double[_grid.Transitions.Length];
        for (int i = 0; i < _weights.Length; i++)
        {
            transitions[i / _marginal.Length] += _weights[i] * _scale;
        }

        (double sigma, double ofSigma) = Moments(_grid.Transitions, transitions);

        // The grid cannot say more than the place within one of its cells.
        double cell = _grid.Spacing / Math.Sqrt(12);
        return new FitEstimate(
            Measured<double>.FromSi(mean, Math.Sqrt((deviation * deviation) + (cell * cell))),
            Quantile((1 - Coverage) / 2),
            Quantile((1 + Coverage) / 2),
            Measured<double>.FromSi(sigma, ofSigma));
    }

    /// <summary>Index of the flow whose trial leaves the smallest expected variance of µ; of equals the lowest.</summary>
    /// <remarks>
    /// With p = P(fits) and c the covariance of µ and the answer, p·var(µ|fits) + (1 − p)·var(µ|not) = var(µ) − c²/(p·(1 − p)).
    /// </remarks>
    internal int BestCandidate()
    {
        (double mean, _) = Moments(_grid.Flows, _marginal);
        int best = 0;
        double most = 0;
        for (int k = 0; k < _grid.Candidates; k++)
        {
            double gain = VarianceGain(k, mean);
            if (gain > most * (1 + 1e-9))
            {
                (best, most) = (k, gain);
            }
        }

        return best;
    }

    private double VarianceGain(int candidate, double mean)
    {
        double p = 0, covariance = 0;
        int n = _marginal.Length;
        for (int s = 0; s < _grid.Transitions.Length; s++)
        {
            ReadOnlySpan<double> probability = _grid.Probability(candidate, s);
            ReadOnlySpan<double> weights = _weights.AsSpan(s * n, n);
            for (int j = 0; j < n; j++)
            {
                double fits = weights[j] * _scale * probability[j];
                p += fits;
                covariance += fits * (_grid.Flows[j] - mean);
            }
        }

        return p > 0 && p < 1 ? covariance * covariance / (p * (1 - p)) : 0;
    }

    /// <summary>Each cell is spread evenly over its width.</summary>
    private double Quantile(double probability)
    {
        double sum = 0;
        for (int j = 0; j < _marginal.Length; j++)
        {
            if (sum + _marginal[j] >= probability)
            {
                return _grid.Flows[j] + ((((probability - sum) / _marginal[j]) - 0.5) * _grid.Spacing);
            }

            sum += _marginal[j];
        }

        return _grid.Flows[^1] + (_grid.Spacing / 2);
    }

    private static (double Mean, double Deviation) Moments(double[] values, double[] weights)
    {
        double mean = 0, variance = 0;
        for (int i = 0; i < values.Length; i++)
        {
            mean += weights[i] * values[i];
        }

        for (int i = 0; i < values.Length; i++)
        {
            variance += weights[i] * (values[i] - mean) * (values[i] - mean);
        }

        return (mean, Math.Sqrt(variance));
    }
}
