namespace CommissioningPass.Pictures;

/// <summary>Labels above a field, on as many lines as it takes that none lies on another.</summary>
internal sealed class MarkLabels
{
    private const double LineHeight = 15;
    private const double Gap = 8;

    private readonly (double X, string Text, int Level)[] _labels;
    private readonly double _top;

    private MarkLabels((double X, string Text, int Level)[] labels, double top)
    {
        _labels = labels;
        _top = top;
    }

    /// <summary>Where the field below may begin.</summary>
    internal double Bottom => _top + (_labels.Length == 0 ? 0 : ((_labels.Max(label => label.Level) + 1) * LineHeight) + 10);

    /// <summary>Labels in order of their places, which are the middles of their texts unless the edge is near.</summary>
    internal static MarkLabels Place(IEnumerable<(double X, string Text)> labels, double top)
    {
        var ends = new List<double>();
        var placed = new List<(double X, string Text, int Level)>();
        foreach ((double x, string text) in labels.OrderBy(label => label.X))
        {
            double half = SvgCanvas.WidthOf(text) / 2;
            double middle = Math.Clamp(x, half + 2, SvgCanvas.Width - half - 2);
            int level = ends.FindIndex(end => middle - half >= end + Gap);
            if (level < 0)
            {
                level = ends.Count;
                ends.Add(0);
            }

            ends[level] = middle + half;
            placed.Add((middle, text, level));
        }

        return new MarkLabels([.. placed], top);
    }

    internal void Draw(SvgCanvas canvas)
    {
        foreach ((double x, string text, int level) in _labels)
        {
            canvas.Text(x, Bottom - 12 - (level * LineHeight), text, TextAlign.Middle);
        }
    }
}
