namespace PrinterMath.Measurement;

/// <summary>How a Monte Carlo propagation is run.</summary>
public sealed record MonteCarloOptions
{
    /// <summary>Seed of the random numbers: the same seed gives the same result.</summary>
    /// <value>No default: the caller states it.</value>
    public required int Seed { get; init; }

    /// <summary>Number of trials.</summary>
    /// <value>1 000 000, as JCGM 101:2008, 7.2.2 advises for a 95 % interval with one or two digits. At least 1000, at most 100 million.</value>
    public int Trials { get; init; } = 1_000_000;

    /// <summary>Correlated pairs of normal inputs with infinite degrees of freedom.</summary>
    /// <value>None.</value>
    public IReadOnlyList<InputCorrelation> Correlations { get; init; } = [];
}
