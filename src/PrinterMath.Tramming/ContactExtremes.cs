namespace PrinterMath.Tramming;

/// <summary>The highest and lowest heights that touched and that were clear; infinite where there is none, so that comparisons hold.</summary>
internal readonly record struct ContactExtremes(double LowestTouching, double HighestTouching, double LowestClear, double HighestClear)
{
    internal static ContactExtremes Of(ReadOnlySpan<ContactTrial> trials)
    {
        double lowT = double.PositiveInfinity, highT = double.NegativeInfinity, lowC = double.PositiveInfinity, highC = double.NegativeInfinity;
        foreach (ContactTrial trial in trials)
        {
            double h = trial.HeightMeters;
            if (trial.Touches)
            {
                lowT = Math.Min(lowT, h);
                highT = Math.Max(highT, h);
            }
            else
            {
                lowC = Math.Min(lowC, h);
                highC = Math.Max(highC, h);
            }
        }

        return new ContactExtremes(lowT, highT, lowC, highC);
    }
}
