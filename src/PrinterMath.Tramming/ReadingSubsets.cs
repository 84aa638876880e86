namespace PrinterMath.Tramming;

/// <summary>Subsets of p of n readings, by their indices: how many there are, all in order, or drawn.</summary>
internal static class ReadingSubsets
{
    internal static double Count(int n, int p)
    {
        double number = 1;
        for (int i = 0; i < p; i++)
        {
            number = number * (n - i) / (i + 1);
        }

        return number;
    }

    internal static bool Next(int[] subset, int n)
    {
        int p = subset.Length;
        for (int i = p - 1; i >= 0; i--)
        {
            if (subset[i] < n - p + i)
            {
                subset[i]++;
                for (int j = i + 1; j < p; j++)
                {
                    subset[j] = subset[j - 1] + 1;
                }

                return true;
            }
        }

        return false;
    }

    internal static void Draw(int[] subset, int n, Random random)
    {
        for (int i = 0; i < subset.Length; i++)
        {
            do
            {
                subset[i] = random.Next(n);
            }
            while (Array.IndexOf(subset, subset[i], 0, i) >= 0);
        }
    }
}
