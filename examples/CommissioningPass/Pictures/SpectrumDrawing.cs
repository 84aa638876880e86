using CommissioningPass.Report;

namespace CommissioningPass.Pictures;

/// <summary>Power spectral density of a decay on a logarithmic scale, with the modes and their 95 % bands.</summary>
internal static class SpectrumDrawing
{
    private const int MostDecades = 8;
    private const string Raised = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    internal static Figure Draw(SpectrumData data)
    {
        double highest = SpectrumData.HighestHertz(data.Spectrum, data.Modes);
        (double, double) range = (0, highest);
        IReadOnlyList<(double Hertz, double Density)> curve = [.. data.Spectrum.UpTo(highest).Where(point => point.Density > 0)];
        int top = curve.Count == 0 ? 0 : (int)Math.Ceiling(Math.Log10(curve.Max(point => point.Density)));
        int bottom = curve.Count == 0 ? -1 : Math.Clamp((int)Math.Floor(Math.Log10(curve.Min(point => point.Density))), top - MostDecades, top - 1);

        var canvas = new SvgCanvas();
        canvas.Text(4, 14, $"Axis {data.Axis}: power density, {data.Unit}", bold: true);
        var labels = MarkLabels.Place(data.Modes.Select(mode => (PlotFrame.Column(mode.Hertz, range), mode.Label)), 20);
        var frame = new PlotFrame(canvas, labels.Bottom, 160, range, (bottom, top));
        int stride = top - bottom > 4 ? 2 : 1;
        frame.Up([.. Enumerable.Range(bottom, top - bottom + 1).Where(decade => (top - decade) % stride == 0).Select(decade => (double)decade)], Power);
        frame.Across("frequency, Hz");
        foreach (ModeMark mode in data.Modes)
        {
            double left = frame.X(mode.Band.Lower);
            canvas.Rectangle(left, frame.Top, frame.X(mode.Band.Upper) - left, frame.Bottom - frame.Top, Palette.Orange);
            canvas.Line(frame.X(mode.Hertz), frame.Top, frame.X(mode.Hertz), frame.Bottom, Palette.Vermilion, 1, mode.LeftOut ? "1 3" : "4 2");
        }

        canvas.Polyline(curve.Select(point => (frame.X(point.Hertz), frame.Y(Math.Log10(point.Density)))), Palette.Blue);
        frame.Border();
        labels.Draw(canvas);
        bool narrow = data.Modes.All(mode => frame.X(mode.Band.Upper) - frame.X(mode.Band.Lower) < 1);
        return new Figure(canvas.Finish(frame.End, Words(data, highest)), Caption(data, narrow));
    }

    private static string Power(double decade)
    {
        string digits = string.Concat(Math.Abs((int)decade).ToString().Select(digit => Raised[digit - '0']));
        return decade < 0 ? "10⁻" + digits : "10" + digits;
    }

    private static string Words(SpectrumData data, double highest) => Spelling.Of(
        $"Power spectral density of axis {data.Axis} from 0 to {highest:0} Hz. {data.Modes.Count} modes are marked: {string.Join(", ", data.Modes.Select(mode => mode.Mode.Frequency.ToString()))}.");

    private static string Caption(SpectrumData data, bool narrow)
    {
        string marks = data.Modes.Count == 0
            ? " No mode was found."
            : $" Lines mark the modes, by number in the table; {(narrow ? "their 95 % intervals are narrower than the lines" : "bands show their 95 % intervals")}.";
        string dotted = data.Modes.Any(mode => mode.LeftOut) ? " Dotted: swings too little to count." : string.Empty;
        return $"How axis {data.Axis} rings after the tap, strength against frequency.{marks}{dotted}";
    }
}
