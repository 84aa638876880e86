using System.Globalization;
using CommissioningPass.Report;
using PrinterMath.Extrusion;
using PrinterMath.Measurement;

namespace CommissioningPass.Pictures;

/// <summary>Flow against outcome, equal flows stacked; below them what the fits and the wall say, with 95 % intervals.</summary>
internal static class FitDrawing
{
    private const double LaneTitle = 18;

    internal static Figure Draw(FitData data)
    {
        (double, double) range = Range(data);
        var canvas = new SvgCanvas();
        canvas.Text(4, 14, "Trials of the fit, and the wall", bold: true);
        double y = Lane(canvas, data, FitOutcome.Fits, "fits (dots)", 20, range);
        y = Lane(canvas, data, FitOutcome.DoesNotFit, "does not fit (crosses)", y, range);
        if (data.Estimate is { } estimate)
        {
            y = Bar(canvas, "by the fit: ", estimate.Flow, (estimate.Lower, estimate.Upper), y, range);
        }

        if (data.Wall is { } wall)
        {
            y = Bar(canvas, "by the wall: ", wall, (wall.Interval().Lower, wall.Interval().Upper), y, range);
        }

        var frame = new PlotFrame(canvas, 20, y - 20, range, (0, 1));
        frame.Across("flow, a ratio");
        frame.Border();
        return new Figure(canvas.Finish(frame.End, Words(data)), Caption(data));
    }

    private static (double Low, double High) Range(FitData data)
    {
        List<double> shown = [data.Series.Lower, data.Series.Upper, .. data.Series.Trials.Select(trial => trial.Flow)];
        if (data.Estimate is { } estimate)
        {
            shown.AddRange([estimate.Lower, estimate.Upper]);
        }

        if (data.Wall is { } wall)
        {
            shown.AddRange([wall.Interval().Lower, wall.Interval().Upper]);
        }

        double margin = (shown.Max() - shown.Min()) * 0.04;
        return (shown.Min() - margin, shown.Max() + margin);
    }

    private static double Lane(SvgCanvas canvas, FitData data, FitOutcome outcome, string title, double top, (double Low, double High) range)
    {
        var stacks = new SortedDictionary<int, (double X, int Count)>();
        foreach (FitTrial trial in data.Series.Trials.Where(trial => trial.Outcome == outcome))
        {
            double x = PlotFrame.Column(trial.Flow, range);
            int place = (int)Math.Round(x / 10);
            stacks[place] = (stacks.TryGetValue(place, out (double X, int Count) stack) ? stack.X : x, stack.Count + 1);
        }

        int most = stacks.Values.Select(stack => stack.Count).DefaultIfEmpty(1).Max();
        double step = Math.Min(11, 66.0 / most);
        double bottom = top + LaneTitle + (step * (most - 1)) + 14;
        canvas.Text(50, top + 14, title);
        foreach ((double x, int count) in stacks.Values)
        {
            for (int i = 0; i < count; i++)
            {
                Mark(canvas, x, bottom - 8 - (i * step), outcome);
            }
        }

        canvas.Line(44, bottom, SvgCanvas.Width - 12, bottom, Palette.Faint);
        return bottom;
    }

    private static void Mark(SvgCanvas canvas, double x, double y, FitOutcome outcome)
    {
        if (outcome == FitOutcome.Fits)
        {
            canvas.Circle(x, y, 4, Palette.Blue);
        }
        else
        {
            canvas.Cross(x, y, 4, Palette.Vermilion);
        }
    }

    private static double Bar(SvgCanvas canvas, string title, Measured<double> flow, (double Lower, double Upper) ends, double top, (double Low, double High) range)
    {
        double y = top + LaneTitle + 8;
        double left = PlotFrame.Column(ends.Lower, range);
        double right = PlotFrame.Column(ends.Upper, range);
        canvas.Text(50, top + 14, Spelling.Of(title + flow));
        canvas.Line(left, y, right, y, Palette.Ink, 2);
        canvas.Line(left, y - 5, left, y + 5, Palette.Ink, 2);
        canvas.Line(right, y - 5, right, y + 5, Palette.Ink, 2);
        double x = PlotFrame.Column(flow.Value, range);
        canvas.Polygon([(x - 6, y), (x, y - 6), (x + 6, y), (x, y + 6)], Palette.Green);
        canvas.Line(44, y + 12, SvgCanvas.Width - 12, y + 12, Palette.Faint);
        return y + 12;
    }

    private static string Words(FitData data)
    {
        int fits = data.Series.Trials.Count(trial => trial.Outcome == FitOutcome.Fits);
        string range = data.Series.Trials.Count == 0 ? string.Empty : Invariant($" at flows from {data.Series.Trials.Min(trial => trial.Flow):0.000} to {data.Series.Trials.Max(trial => trial.Flow):0.000}");
        string estimate = data.Estimate is { } by ? Invariant($" By the fit {by.Flow}, 95 % from {by.Lower:0.000} to {by.Upper:0.000}.") : " The fit gives no answer yet.";
        string wall = data.Wall is { } flow ? $" By the wall {flow}." : string.Empty;
        return Spelling.Of($"{data.Series.Trials.Count} pairs{range}: {fits} fit, {data.Series.Trials.Count - fits} do not.{estimate}{wall}");
    }

    private static string Caption(FitData data)
    {
        string bars = data.Estimate is null && data.Wall is null ? string.Empty : " Diamonds with bars: the flow and its 95 % interval.";
        string rule = data.Estimate is null ? string.Empty : " The fit's is where half of the pairs go together; the wall sets the flow.";
        return $"Each mark is a pair of pieces printed at that flow: a dot went together, a cross did not.{bars}{rule}";
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
