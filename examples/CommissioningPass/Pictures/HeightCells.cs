namespace CommissioningPass.Pictures;

/// <summary>Probed points gathered into cells large enough for a number: one for each place of a small grid, else blocks.</summary>
internal sealed class HeightCells
{
    private const int MostColumns = 7;
    private const int MostRows = 8;

    private HeightCells(double[] columns, double[] rows, (double Mean, int Count)?[,] cells)
    {
        Columns = columns;
        Rows = rows;
        Cells = cells;
    }

    /// <summary>Middles of the columns, from left.</summary>
    internal IReadOnlyList<double> Columns { get; }

    /// <summary>Middles of the rows, from the front.</summary>
    internal IReadOnlyList<double> Rows { get; }

    /// <summary>Mean height and number of readings by column and row; null where none was made.</summary>
    internal (double Mean, int Count)?[,] Cells { get; }

    internal IEnumerable<(double Mean, int Count)> Filled => Cells.Cast<(double Mean, int Count)?>().OfType<(double Mean, int Count)>();

    internal static HeightCells Of(IReadOnlyList<(double X, double Y, double Height)> points)
    {
        double[] columns = Middles([.. points.Select(point => point.X)], MostColumns);
        double[] rows = Middles([.. points.Select(point => point.Y)], MostRows);
        var cells = new (double Mean, int Count)?[columns.Length, rows.Length];
        foreach (IGrouping<(int Column, int Row), (double X, double Y, double Height)> group in points.GroupBy(point => (Nearest(columns, point.X), Nearest(rows, point.Y))))
        {
            cells[group.Key.Column, group.Key.Row] = (group.Average(point => point.Height), group.Count());
        }

        return new HeightCells(columns, rows, cells);
    }

    /// <summary>Values a hundredth of their range apart are one place; too many places make even blocks.</summary>
    private static double[] Middles(double[] values, int most)
    {
        Array.Sort(values);
        double range = values[^1] - values[0];
        var places = new List<List<double>>();
        foreach (double value in values)
        {
            if (places.Count == 0 || value - places[^1][^1] > range / 100)
            {
                places.Add([]);
            }

            places[^1].Add(value);
        }

        return places.Count <= most
            ? [.. places.Select(place => place.Average())]
            : [.. Enumerable.Range(0, most).Select(i => values[0] + (range * (i + 0.5) / most))];
    }

    private static int Nearest(double[] middles, double value) => Array.IndexOf(middles, middles.MinBy(middle => Math.Abs(middle - value)));
}
