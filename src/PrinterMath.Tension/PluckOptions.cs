using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>How <see cref="Pluck.Read"/> listens. Checked when reading begins.</summary>
/// <example><code>PluckOptions options = new() { LowestFundamental = Frequency.FromHertz(60), HighestFundamental = Frequency.FromHertz(250) };</code></example>
public sealed record PluckOptions
{
    /// <summary>Lowest fundamental looked for.</summary>
    /// <value>20 Hz; at least 10 Hz and below <see cref="HighestFundamental"/>.</value>
    public Frequency LowestFundamental { get; init; } = Frequency.FromHertz(20);

    /// <summary>Highest fundamental looked for.</summary>
    /// <value>1000 Hz; at most 2000 Hz. A narrower range that the span allows is the best guard against octave errors.</value>
    public Frequency HighestFundamental { get; init; } = Frequency.FromHertz(1000);

    /// <summary>Longest time listened to after each onset.</summary>
    /// <value>3 s; from 0.1 s to 10 s.</value>
    public Duration LongestWindow { get; init; } = Duration.FromSeconds(3);

    /// <summary>Most plucks that take part, the loudest first. Sounds without a pitch do not count, but no more than four times as many sounds are analysed.</summary>
    /// <value>8; from 1 to 32. How many were left out is said by <see cref="PluckFindings.LeftOut"/>.</value>
    public int MostPlucks { get; init; } = 8;

    internal void Check()
    {
        double low = Guard.Between(LowestFundamental.Hertz, 10, 2000, nameof(LowestFundamental));
        Guard.Between(HighestFundamental.Hertz, 10, 2000, nameof(HighestFundamental));
        if (HighestFundamental.Hertz <= low)
        {
            throw Guard.Out(nameof(HighestFundamental), HighestFundamental, $"above LowestFundamental, {LowestFundamental}");
        }

        Guard.Between(LongestWindow.Seconds, 0.1, 10, nameof(LongestWindow));
        Guard.Between(MostPlucks, 1, 32, nameof(MostPlucks));
    }
}
