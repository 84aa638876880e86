using System.Globalization;
using CommissioningPass.Report;
using PrinterMath.Tension;

namespace CommissioningPass.Pictures;

/// <summary>Spectrum of a pluck in decibels below its strongest line, the partials marked and numbered.</summary>
internal static class PluckDrawing
{
    private const double DeepestDecibels = -80;

    /// <summary>The picture ends here, in fundamentals, at the least and at the most.</summary>
    private const double Fewest = 4;
    private const double Most = 18;

    internal static Figure Draw(PluckData pluck)
    {
        double fundamental = pluck.Fundamental.Value.Hertz;
        Partial[] partials = [.. pluck.Partials.OrderBy(partial => partial.Number)];
        double farthest = partials.Select(partial => partial.Frequency.Hertz).DefaultIfEmpty(0).Max() * 1.15;
        double highest = Math.Min(pluck.Spectrum.HighestHertz, Math.Clamp(farthest, Fewest * fundamental, Most * fundamental));
        (double, double) range = (0, highest);
        IReadOnlyList<(double Hertz, double Density)> curve = pluck.Spectrum.UpTo(highest);
        double strongest = curve.Max(point => point.Density);

        var canvas = new SvgCanvas();
        canvas.Text(4, 14, $"Belt {pluck.Belt}: dB below the strongest", bold: true);
        var labels = MarkLabels.Place(Numbers(partials.Where(partial => partial.Frequency.Hertz <= highest), range), 20);
        var frame = new PlotFrame(canvas, labels.Bottom, 150, range, (DeepestDecibels, 0));
        frame.Up([0, -20, -40, -60, -80], tick => Spelling.Minus(tick.ToString("0", CultureInfo.InvariantCulture)));
        frame.Across("frequency, Hz");
        foreach (Partial partial in partials.Where(partial => partial.Frequency.Hertz <= highest))
        {
            double x = frame.X(partial.Frequency.Hertz);
            canvas.Line(x, frame.Top, x, frame.Bottom, Palette.Vermilion, 1, partial.Fits ? "4 2" : "1 3");
        }

        canvas.Polyline(curve.Select(point => (frame.X(point.Hertz), frame.Y(Decibels(point.Density / strongest)))), Palette.Blue);
        frame.Border();
        labels.Draw(canvas);
        return new Figure(canvas.Finish(frame.End, Words(pluck, partials, highest)), Caption(pluck, partials, highest));
    }

    private static double Decibels(double ratio) => ratio > 0 ? 10 * Math.Log10(ratio) : DeepestDecibels;

    /// <summary>A number that would touch the one before it is left out.</summary>
    private static IEnumerable<(double X, string Text)> Numbers(IEnumerable<Partial> partials, (double Low, double High) range)
    {
        double free = 0;
        foreach (Partial partial in partials)
        {
            string text = partial.Fits ? Invariant($"{partial.Number}") : Invariant($"({partial.Number})");
            double x = PlotFrame.Column(partial.Frequency.Hertz, range);
            double half = SvgCanvas.WidthOf(text) / 2;
            if (x - half >= free)
            {
                free = x + half + 8;
                yield return (x, text);
            }
        }
    }

    private static string Words(PluckData pluck, Partial[] partials, double highest) => Spelling.Of(Invariant(
        $"Spectrum of {pluck.File}, belt {pluck.Belt}, from 0 to {highest:0} Hz. {partials.Length} partials are marked: {string.Join(", ", partials.Select(partial => Invariant($"{partial.Frequency.Hertz:0.0} Hz")))}. The belt sounds at {pluck.Fundamental}."));

    private static string Caption(PluckData pluck, Partial[] partials, double highest)
    {
        string strays = partials.Any(partial => !partial.Fits) ? " Numbers in brackets, dotted: lines that lie off and count little." : string.Empty;
        Partial[] beyond = [.. partials.Where(partial => partial.Frequency.Hertz > highest)];
        string farther = beyond.Length == 0 ? string.Empty : Invariant($" Beyond the picture: {string.Join(", ", beyond.Select(partial => Invariant($"partial {partial.Number} at {partial.Frequency.Hertz:0} Hz")))}.");
        return Spelling.Of($"What {pluck.File} holds. Dashed lines mark the partials of belt {pluck.Belt}, by number; together they say that it sounds at {pluck.Fundamental}.{strays}{farther}");
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
