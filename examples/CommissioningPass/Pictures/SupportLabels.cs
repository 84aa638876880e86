namespace CommissioningPass.Pictures;

/// <summary>What stands beside the screws of one half of the bed: blocks of lines, put one beyond another where they would touch.</summary>
internal sealed class SupportLabels
{
    private const double LineHeight = 15;
    private const double Gap = 10;

    private readonly List<(SupportMark Support, double Place, double Middle, double Half, int Level)> _blocks = [];

    private SupportLabels()
    {
    }

    internal int Lines => _blocks.Count == 0 ? 0 : (_blocks.Max(block => block.Level) + 1) * BlockLines;

    private int BlockLines => _blocks.Max(block => Text(block.Support).Length);

    internal static SupportLabels Place(IEnumerable<SupportMark> supports, Func<double, double> column)
    {
        var labels = new SupportLabels();
        var ends = new List<double>();
        foreach (SupportMark support in supports.OrderBy(support => support.X).ThenBy(support => support.Y))
        {
            double half = Text(support).Max(SvgCanvas.WidthOf) / 2;
            double middle = Math.Clamp(column(support.X), half + 2, SvgCanvas.Width - half - 2);
            int level = ends.FindIndex(end => middle - half >= end + Gap);
            if (level < 0)
            {
                level = ends.Count;
                ends.Add(0);
            }

            ends[level] = middle + half;
            labels._blocks.Add((support, column(support.X), middle, half, level));
        }

        return labels;
    }

    /// <summary>Lines from the screws to their blocks, to be drawn below everything else.</summary>
    internal void Leaders(SvgCanvas canvas, double edge, bool upwards, Func<double, double> row)
    {
        foreach ((SupportMark support, double place, double middle, double half, int level) in _blocks)
        {
            double away = level * BlockLines * LineHeight * (upwards ? -1 : 1);
            canvas.Line(place, row(support.Y), Math.Clamp(place, middle - half, middle + half), edge + away, Palette.Grey);
        }
    }

    internal void Draw(SvgCanvas canvas, double edge, bool upwards)
    {
        foreach ((SupportMark support, _, double middle, double half, int level) in _blocks)
        {
            string[] lines = Text(support);
            double first = upwards ? edge - (((level * BlockLines) + lines.Length - 1) * LineHeight) - 4 : edge + (((level * BlockLines) + 1) * LineHeight) - 2;
            canvas.Rectangle(middle - half - 2, first - 12, (2 * half) + 4, lines.Length * LineHeight, Palette.Paper);
            for (int i = 0; i < lines.Length; i++)
            {
                canvas.Text(middle, first + (i * LineHeight), lines[i], TextAlign.Middle, bold: i == 0);
            }
        }
    }

    private static string[] Text(SupportMark support)
    {
        string name = SvgCanvas.Fit(support.Name, SvgCanvas.Width / 2);
        return support.Leave
            ? [name, "leave it"]
            : [name, $"{support.Turn} {support.Sense}", $"{support.From}, {(support.Raises ? "raises" : "lowers")}"];
    }
}
