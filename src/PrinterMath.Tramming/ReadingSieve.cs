namespace PrinterMath.Tramming;

/// <summary>Finds readings of a series that do not belong: at its start, and one by one.</summary>
internal static class ReadingSieve
{
    private const int FewestForWarmUp = 8;
    private const int FewestForOutliers = 6;

    /// <summary>The number of first readings whose mean departs most from the line through the rest, where that is significant (Bonferroni over the numbers tried).</summary>
    internal static int WarmUp(double[] z)
    {
        int most = z.Length < FewestForWarmUp ? 0 : z.Length / 3;
        int found = 0;
        double least = TwoSidedTest.Risk / Math.Max(1, most);
        for (int k = 1; k <= most; k++)
        {
            var rest = TrendLine.Through(z, k, []);
            double mean = 0;
            for (int i = 0; i < k; i++)
            {
                mean += rest.Residual(i, z[i]) / k;
            }

            double away = ((k - 1) / 2.0) - rest.MeanPlace;
            double u = rest.AboutLine * Math.Sqrt((1.0 / k) + (1.0 / rest.Count) + (away * away / rest.Spread));
            double chance = u > 0 ? TwoSidedTest.ProbabilityBeyond(mean / u, rest.Count - 2) : mean == 0 ? 1 : 0;
            if (chance < least)
            {
                (least, found) = (chance, k);
            }
        }

        return found;
    }

    internal static int[] Outliers(double[] z, int first)
    {
        var found = new List<int>();
        int count = z.Length - first;
        int most = count < FewestForOutliers ? 0 : count / 5;
        while (found.Count < most)
        {
            int worst = -1;
            double least = TwoSidedTest.Risk / (count - found.Count);
            for (int i = first; i < z.Length; i++)
            {
                if (found.Contains(i))
                {
                    continue;
                }

                var others = TrendLine.Through(z, first, [.. found, i]);
                double u = others.AboutLine * Math.Sqrt(1 + others.Leverage(i));
                double away = others.Residual(i, z[i]);
                double chance = u > 0 ? TwoSidedTest.ProbabilityBeyond(away / u, others.Count - 2) : Math.Abs(away) > 1e-12 * Math.Abs(z[i]) ? 0 : 1;
                if (chance < least)
                {
                    (least, worst) = (chance, i);
                }
            }

            if (worst < 0)
            {
                break;
            }

            found.Add(worst);
        }

        found.Sort();
        return [.. found];
    }
}
