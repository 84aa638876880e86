namespace PrinterMath.Resonance;

/// <summary>Values at n·period after the start, from rows at irregular times.</summary>
internal static class UniformGrid
{
    /// <summary>Pairs of samples in a polynomial at an end: more would raise the noise there.</summary>
    private const int MostToOneSide = 3;

    /// <summary>Fills the grid; rows at places that follow each other are interpolated in their own way, wider steps by a straight line.</summary>
    internal static double[] Fill(double[] times, int[] places, double[] values, double start, double period, Interpolation interpolation)
    {
        int count = places[^1] + 1;
        double[] grid = new double[count];
        int left = 0;
        for (int n = 0; n < count; n++)
        {
            double t = start + (n * period);
            while (left < times.Length - 2 && times[left + 1] <= t)
            {
                left++;
            }

            (int first, int many) = Neighbours(places, left, interpolation);
            grid[n] = many == 2 ? Line(times, values, left, t) : Polynomial(times, values, first, many, t);
        }

        return grid;
    }

    /// <summary>Every row at its place in the count, gaps by straight lines.</summary>
    internal static double[] Place(int[] places, double[] values)
    {
        double[] grid = new double[places[^1] + 1];
        for (int i = 0; i < places.Length; i++)
        {
            grid[places[i]] = values[i];
            for (int n = i == 0 ? 0 : places[i - 1] + 1; i > 0 && n < places[i]; n++)
            {
                double share = (double)(n - places[i - 1]) / (places[i] - places[i - 1]);
                grid[n] = values[i - 1] + (share * (values[i] - values[i - 1]));
            }
        }

        return grid;
    }

    private static double Line(double[] times, double[] values, int left, double t)
    {
        double share = Math.Clamp((t - times[left]) / (times[left + 1] - times[left]), 0, 1);
        return values[left] + (share * (values[left + 1] - values[left]));
    }

    /// <summary>Samples about a step that follow each other without a gap, no more than the interpolation wants; at the ends of the record up to six that lie to one side.</summary>
    private static (int First, int Count) Neighbours(int[] places, int left, Interpolation interpolation)
    {
        int reach = interpolation switch { Interpolation.Linear => 1, Interpolation.Cubic => 2, _ => 4 };
        for (; reach > 1; reach--)
        {
            int centred = left + 1 - reach;
            int first = Math.Clamp(centred, 0, Math.Max(0, places.Length - (2 * reach)));
            int last = first + (2 * reach) - 1;
            if (last < places.Length && places[last] - places[first] == last - first && (first == centred || reach <= MostToOneSide))
            {
                return (first, 2 * reach);
            }
        }

        return (left, 2);
    }

    /// <summary>Lagrange's polynomial through some samples in a row.</summary>
    private static double Polynomial(double[] times, double[] values, int first, int count, double t)
    {
        double sum = 0;
        for (int i = first; i < first + count; i++)
        {
            double factor = values[i];
            for (int j = first; j < first + count; j++)
            {
                factor *= i == j ? 1 : (t - times[j]) / (times[i] - times[j]);
            }

            sum += factor;
        }

        return sum;
    }
}
