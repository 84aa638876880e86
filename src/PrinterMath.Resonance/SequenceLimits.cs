using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>What a sequence may cost and how sure it must be.</summary>
public sealed record SequenceLimits
{
    /// <summary>Longest sequence.</summary>
    /// <value>Null: no limit. Greater than zero otherwise.</value>
    public Duration? LongestDuration { get; init; }

    /// <summary>Residual vibration that is good enough, a ratio: of the sequences that meet it the one of least variance is taken.</summary>
    /// <value>Null: the least residual is taken, whatever it costs within the duration. Greater than 0 and less than 1 otherwise.</value>
    public double? AcceptableResidual { get; init; }

    /// <summary>How many standard uncertainties of frequency and damping ratio the box about each mode spans either way.</summary>
    /// <value>2. Zero or more.</value>
    public double CoverageFactor { get; init; } = 2;

    /// <summary>Residual that an extra-insensitive sequence tolerates at its design frequency, a ratio.</summary>
    /// <value>Null: 0.95 of <see cref="AcceptableResidual"/>, since the residual rises a little above the tolerance where damping is not as designed; 0.05 without one. From 0.005 to 0.3.</value>
    public double? Tolerance { get; init; }

    /// <summary>Number of design frequencies tried for each family.</summary>
    /// <value>81. At least 2.</value>
    public int Frequencies { get; init; } = 81;
}
