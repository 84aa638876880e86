namespace PrinterMath.Resonance;

/// <summary>Rows of a record in order of time, each time once unless the stamps are coarser than the samples.</summary>
internal sealed class TimedRows
{
    /// <summary>A share of equal times above which the stamps, not the rows, are at fault.</summary>
    private const double CoarseShare = 0.1;

    private TimedRows(double[] times, double[][] axes, int moved, int dropped, bool coarse)
    {
        Times = times;
        Axes = axes;
        Moved = moved;
        Dropped = dropped;
        Coarse = coarse;
    }

    internal double[] Times { get; }

    internal double[][] Axes { get; }

    internal int Moved { get; }

    internal int Dropped { get; }

    internal bool Coarse { get; }

    internal static TimedRows Sort(ReadOnlySpan<double> times, ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> z)
    {
        int moved = 0;
        for (int i = 1; i < times.Length; i++)
        {
            moved += times[i] < times[i - 1] ? 1 : 0;
        }

        double[] copy = times.ToArray();
        int[] order = [.. Enumerable.Range(0, copy.Length)];
        if (moved > 0)
        {
            order = [.. order.OrderBy(i => copy[i])];
        }

        int equal = 0;
        for (int i = 1; i < order.Length; i++)
        {
            equal += copy[order[i]] == copy[order[i - 1]] ? 1 : 0;
        }

        double[][] axes = [x.ToArray(), y.ToArray(), z.ToArray()];
        int copies = CountCopies(copy, axes, order);
        bool coarse = equal - copies > CoarseShare * order.Length;
        int[] kept = [.. order.Where((row, i) => i == 0 || copy[row] != copy[order[i - 1]] || (coarse && !Same(axes, row, order[i - 1])))];
        return new TimedRows(
            [.. kept.Select(row => copy[row])],
            [.. axes.Select(axis => kept.Select(row => axis[row]).ToArray())],
            moved,
            order.Length - kept.Length,
            coarse);
    }

    private static int CountCopies(double[] times, double[][] axes, int[] order)
    {
        int copies = 0;
        for (int i = 1; i < order.Length; i++)
        {
            copies += times[order[i]] == times[order[i - 1]] && Same(axes, order[i], order[i - 1]) ? 1 : 0;
        }

        return copies;
    }

    private static bool Same(double[][] axes, int row, int other) => axes.All(axis => axis[row] == axis[other]);
}
