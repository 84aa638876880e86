namespace PrinterMath.Resonance;

/// <summary>Values at n·period after the start, from rows at irregular times.</summary>
internal static class UniformGrid
{
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

            bool alone = interpolation == Interpolation.Linear
                || left == 0
                || left + 2 >= times.Length
                || places[left + 2] - places[left - 1] != 3
                || t < times[0]
                || t > times[^1];
            grid[n] = alone ? Line(times, values, left, t) : Cubic(times, values, left - 1, t);
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

    /// <summary>Lagrange's cubic through four samples.</summary>
    private static double Cubic(double[] times, double[] values, int first, double t)
    {
        double sum = 0;
        for (int i = first; i < first + 4; i++)
        {
            double factor = values[i];
            for (int j = first; j < first + 4; j++)
            {
                factor *= i == j ? 1 : (t - times[j]) / (times[i] - times[j]);
            }

            sum += factor;
        }

        return sum;
    }
}
