namespace PrinterMath.SurfaceMesh;

/// <summary>The covariances that readings leave open, with their shares: integrals over length, sill and nugget become sums over a lattice.</summary>
/// <remarks>
/// Prior: level in the logarithm of the length, from half the shortest distance of two places to three times the longest, level in that of the ratio of nugget to sill, 10⁻⁶ to 10², or, where the noise is
/// known, of the standard deviation, from 1/50 of the residuals' about the trend to 50 times it; 1/σ² for a sill that is estimated, which integrates to a power of the residual form. Likelihood: restricted, the
/// trend integrated out. A coarse lattice finds where the density is, a fine one sums it.
/// Source: M. S. Handcock, M. L. Stein 1993, A Bayesian analysis of kriging, Technometrics 35, 403-410 (from memory).
/// </remarks>
internal sealed class KrigingPosterior
{
    private const int Coarse = 13;
    private const int Fine = 13;
    private const double Faintest = 2e-3;
    private readonly KrigingReadings _readings;
    private readonly CancellationToken _cancellation;

    private KrigingPosterior(KrigingReadings readings, CancellationToken cancellation)
    {
        _readings = readings;
        _cancellation = cancellation;
    }

    /// <summary>The covariances whose density is above 0.002 of the largest, shares summing to one; empty where none is positive definite.</summary>
    internal static KrigingNode[] Of(KrigingReadings readings, CancellationToken cancellation)
    {
        KrigingPosterior posterior = new(readings, cancellation);
        double[] lengths = Even(Math.Log(readings.Shortest / 2), Math.Log(3 * readings.Longest), Coarse);
        double middle = readings.NoiseKnown ? Math.Log(readings.Spread) : Math.Log(1e-2);
        double reach = readings.NoiseKnown ? Math.Log(50) : Math.Log(1e4);
        double[] others = Even(middle - reach, middle + reach, Coarse);
        (double From, double To) bandL = (lengths[0], lengths[^1]), bandO = (others[0], others[^1]);
        (KrigingNode Node, double L, double O)[] found = posterior.Lattice(lengths, others);
        if (found.Length > 0)
        {
            double stepL = lengths[1] - lengths[0], stepO = others[1] - others[0];
            bandL = (Math.Max(bandL.From, found.Min(f => f.L) - stepL), Math.Min(bandL.To, found.Max(f => f.L) + stepL));
            bandO = (Math.Max(bandO.From, found.Min(f => f.O) - stepO), Math.Min(bandO.To, found.Max(f => f.O) + stepO));
            found = posterior.Lattice(Even(bandL.From, bandL.To, Fine), Even(bandO.From, bandO.To, Fine));
        }

        double best = found.Length > 0 ? found.Max(f => f.Node.LogOdds) : 0, sum = found.Sum(f => Math.Exp(f.Node.LogOdds - best));
        return [.. found.Select(f => f.Node with { Share = Math.Exp(f.Node.LogOdds - best) / sum })];
    }

    /// <summary>The nodes that count, of all pairs.</summary>
    private (KrigingNode Node, double L, double O)[] Lattice(double[] logLengths, double[] logOthers)
    {
        List<(KrigingNode Node, double L, double O)> nodes = [];
        foreach (double logLength in logLengths)
        {
            double[][] correlation = _readings.Correlations(Math.Exp(logLength));
            foreach (double logOther in logOthers)
            {
                _cancellation.ThrowIfCancellationRequested();
                if (Node(correlation, Math.Exp(logLength), Math.Exp(logOther)) is { } node)
                {
                    nodes.Add((node, logLength, logOther));
                }
            }

            double best = nodes.Count > 0 ? nodes.Max(n => n.Node.LogOdds) : 0;
            nodes.RemoveAll(n => n.Node.LogOdds < best + Math.Log(Faintest));
        }

        return [.. nodes];
    }

    private KrigingNode? Node(double[][] correlation, double length, double other)
    {
        double sill = _readings.NoiseKnown ? other * other : 1;
        double[] noise = _readings.NoiseKnown ? _readings.Noise : [.. _readings.Noise.Select(share => other * share)];
        if (KrigingSystem.Of(correlation, sill, noise, _readings.Trend, _readings.Z, _cancellation) is not { Squares: > 0 } system)
        {
            return null;
        }

        double scale = _readings.NoiseKnown ? 1 : system.Squares / _readings.Freedom;
        double odds = -0.5 * (system.LogDeterminants + (_readings.NoiseKnown ? system.Squares : _readings.Freedom * Math.Log(system.Squares)));
        return new KrigingNode(length, sill, scale, _readings.NoiseKnown ? _readings.Noise.Average() : other * scale, system, odds);
    }

    private static double[] Even(double from, double to, int count) => [.. Enumerable.Range(0, count).Select(i => from + ((to - from) * i / (count - 1)))];
}
