namespace CommissioningPass.Pictures;

/// <summary>The field of a diagram: places of values, frame, ticks and titles. Titles stand level, the upright one above its axis.</summary>
internal sealed class PlotFrame
{
    private const double Left = 44;
    private const double Right = SvgCanvas.Width - 12;

    private readonly SvgCanvas _canvas;
    private readonly (double Low, double High) _across;
    private readonly (double Low, double High) _up;

    internal PlotFrame(SvgCanvas canvas, double top, double height, (double Low, double High) across, (double Low, double High) up)
    {
        _canvas = canvas;
        Top = top;
        Bottom = top + height;
        _across = across;
        _up = up;
    }

    internal double Top { get; }

    internal double Bottom { get; }

    /// <summary>Height of the picture that ends with this field and its lower title.</summary>
    internal double End => Bottom + 40;

    internal static double Column(double value, (double Low, double High) across) =>
        Left + (Math.Clamp((value - across.Low) / (across.High - across.Low), 0, 1) * (Right - Left));

    internal double X(double value) => Column(value, _across);

    internal double Y(double value) => Bottom - (Math.Clamp((value - _up.Low) / (_up.High - _up.Low), 0, 1) * (Bottom - Top));

    internal void Across(string title)
    {
        IReadOnlyList<double> ticks = Ticks.Between(_across.Low, _across.High, 8);
        foreach (double tick in ticks)
        {
            _canvas.Line(X(tick), Bottom, X(tick), Bottom + 4, Palette.Grey);
            _canvas.Text(X(tick), Bottom + 17, Ticks.Write(tick, ticks), TextAlign.Middle);
        }

        _canvas.Text((Left + Right) / 2, Bottom + 34, title, TextAlign.Middle);
    }

    internal void Up(IReadOnlyList<double> ticks, Func<double, string> write)
    {
        foreach (double tick in ticks)
        {
            _canvas.Line(Left, Y(tick), Right, Y(tick), Palette.Faint);
            _canvas.Text(Left - 6, Y(tick) + 4, write(tick), TextAlign.Right);
        }
    }

    internal void Border() => _canvas.Polyline([(Left, Top), (Left, Bottom), (Right, Bottom)], Palette.Grey, 1);

    /// <summary>A limit across the whole field; its words stand at the right of the heading, where no curve runs through them.</summary>
    internal void Limit(double value, string words)
    {
        _canvas.Line(Left, Y(value), Right, Y(value), Palette.Ink, 1.5, "6 3");
        _canvas.Line(Right - SvgCanvas.WidthOf(words) - 34, 10, Right - SvgCanvas.WidthOf(words) - 8, 10, Palette.Ink, 1.5, "6 3");
        _canvas.Text(Right, 14, words, TextAlign.Right);
    }
}
