namespace PrinterMath.Tension;

/// <summary>How a stiff string explains the peaks: which peak is which partial, and the log odds against "no string here".</summary>
internal sealed class StringMatch
{
    internal StringMatch(StiffString model, int[] numbers, int[] peaks, double logOdds)
    {
        Model = model;
        Numbers = numbers;
        Peaks = peaks;
        LogOdds = logOdds;
    }

    internal StiffString Model { get; }

    /// <summary>Partial numbers, rising.</summary>
    internal int[] Numbers { get; }

    /// <summary>Index of the peak that stands for each partial.</summary>
    internal int[] Peaks { get; }

    internal double LogOdds { get; }
}
