using System.Globalization;
using CommissioningPass.Report;
using PrinterMath.Measurement;
using UnitsNet;

namespace CommissioningPass.Pictures;

/// <summary>The window of tension as a band whose edges are as wide as they are uncertain, and both belts in it with their 95 % intervals.</summary>
internal static class TensionWindowDrawing
{
    private const double Top = 24;
    private const double Lane = 44;

    internal static Figure Draw(TensionWindowData data)
    {
        (double, double) range = Range(data);
        double bottom = Top + (3 * Lane);
        var canvas = new SvgCanvas();
        canvas.Text(4, 14, "Tension window and both belts", bold: true);
        var frame = new PlotFrame(canvas, Top, bottom - Top, range, (0, 1));
        if (data.Upper.SiValue > data.Lower.SiValue)
        {
            canvas.Rectangle(frame.X(data.Lower.SiValue), Top, frame.X(data.Upper.SiValue) - frame.X(data.Lower.SiValue), bottom - Top, Palette.Faint);
        }

        Edge(canvas, frame, data.Lower, "at least", Top + 14, TextAlign.Right);
        Edge(canvas, frame, data.Upper, "at most", Top + 14, TextAlign.Left);
        if (data.Target is { } target)
        {
            double x = frame.X(target.Newtons);
            canvas.Line(x, Top, x, bottom, Palette.Green, 2);
        }

        Belt(canvas, frame, "A: ", data.A, Top + Lane);
        Belt(canvas, frame, "B: ", data.B, Top + (2 * Lane));
        frame.Across("tension at rest, N");
        frame.Border();
        return new Figure(canvas.Finish(frame.End, Words(data)), Caption(data));
    }

    private static (double Low, double High) Range(TensionWindowData data)
    {
        Measured<Force>[] all = [data.Lower, data.Upper, data.A, data.B];
        double low = Math.Max(0, all.Min(item => item.SiValue - (2.5 * item.SiStandardUncertainty)));
        double high = all.Max(item => item.SiValue + (2.5 * item.SiStandardUncertainty));
        double margin = Math.Max(1, 0.2 * (high - low));
        return (Math.Max(0, low - margin), high + margin);
    }

    /// <summary>A dashed line at the limit, a bar over its 95 % interval.</summary>
    private static void Edge(SvgCanvas canvas, PlotFrame frame, Measured<Force> limit, string words, double y, TextAlign align)
    {
        double x = frame.X(limit.SiValue);
        canvas.Line(x, frame.Top, x, frame.Bottom, Palette.Vermilion, 1.5, "6 3");
        ExpandedInterval<Force> interval = limit.Interval();
        canvas.Line(frame.X(interval.Lower.Newtons), y + 8, frame.X(interval.Upper.Newtons), y + 8, Palette.Vermilion, 3);
        double width = SvgCanvas.WidthOf(words) + 6;
        bool room = align == TextAlign.Right ? x - width > 44 : x + width < SvgCanvas.Width - 12;
        canvas.Text(align == TextAlign.Right == room ? x - 4 : x + 4, y, words, align == TextAlign.Right == room ? TextAlign.Right : TextAlign.Left);
    }

    private static void Belt(SvgCanvas canvas, PlotFrame frame, string title, Measured<Force> tension, double top)
    {
        double y = top + 26;
        ExpandedInterval<Force> interval = tension.Interval();
        double left = frame.X(interval.Lower.Newtons);
        double right = frame.X(interval.Upper.Newtons);
        double x = frame.X(tension.SiValue);
        string text = Spelling.Of(title + tension);
        double half = SvgCanvas.WidthOf(text) / 2;
        canvas.Text(Math.Clamp(x, 48 + half, SvgCanvas.Width - 14 - half), top + 14, text, TextAlign.Middle);
        canvas.Line(left, y, right, y, Palette.Ink, 2);
        canvas.Line(left, y - 5, left, y + 5, Palette.Ink, 2);
        canvas.Line(right, y - 5, right, y + 5, Palette.Ink, 2);
        canvas.Polygon([(x - 6, y), (x, y - 6), (x + 6, y), (x, y + 6)], Palette.Blue);
    }

    private static string Words(TensionWindowData data) => Spelling.Of(
        $"Tension window from {data.Lower} to {data.Upper}, the upper limit that of the {data.UpperPlace}. Belt A has {data.A}, belt B {data.B}.{Aim(data, " The aim is {0} N.")}");

    private static string Caption(TensionWindowData data) => Spelling.Of(
        $"Grey: the tensions that serve, at least {data.Lower} for the slack side, at most {data.Upper} for the {data.UpperPlace}; bars on the dashed lines are the limits' 95 % intervals. Diamonds with bars: the belts with theirs.{Aim(data, " Full line: the aim, {0} N.")}");

    private static string Aim(TensionWindowData data, string words) =>
        data.Target is { } target ? words.Replace("{0}", target.Newtons.ToString("0.0", CultureInfo.InvariantCulture), StringComparison.Ordinal) : string.Empty;
}
