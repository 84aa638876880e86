namespace PrinterMath.Resonance;

/// <summary>Local maxima of a smooth function: from a grid that is fine enough to separate them, refined by golden sections.</summary>
internal static class Peaks
{
    private const int Refinements = 36;

    /// <summary>Where the function has local maxima above a level, ends included.</summary>
    internal static List<double> Of(Func<double, double> function, double low, double high, int steps, double level)
    {
        List<double> found = [];
        double[] values = new double[steps + 1];
        double At(int i) => i == steps ? high : low + ((high - low) * i / steps);
        for (int i = 0; i <= steps; i++)
        {
            values[i] = function(At(i));
        }

        for (int i = 0; i <= steps; i++)
        {
            bool rises = i == 0 || values[i] >= values[i - 1];
            bool falls = i == steps || values[i] > values[i + 1];
            if (rises && falls)
            {
                double best = At(i), height = values[i];
                if (steps > 0)
                {
                    (double refined, double refinedHeight) = GoldenSection.Maximum(function, At(Math.Max(0, i - 1)), At(Math.Min(steps, i + 1)), Refinements);
                    (best, height) = refinedHeight > height ? (refined, refinedHeight) : (best, height);
                }

                if (height > level)
                {
                    found.Add(best);
                }
            }
        }

        return found;
    }
}
