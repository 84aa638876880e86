using System.Globalization;
using UnitsNet;

namespace CommissioningPass.Pictures;

/// <summary>Residual vibration of one sequence against frequency, in a field of its own, with the limit.</summary>
internal static class ResidualDrawing
{
    private const int Steps = 300;

    internal static Figure Draw(ResidualData data)
    {
        (double, double) range = (0, data.HighestHertz);
        var canvas = new SvgCanvas();
        canvas.Text(4, 14, $"Axis {data.Axis}: vibration left, %", bold: true);
        var labels = MarkLabels.Place(data.Modes.Select(mode => (PlotFrame.Column(mode.Hertz, range), mode.Label)), 20);
        var frame = new PlotFrame(canvas, labels.Bottom, 160, range, (0, 100));
        frame.Up([0, 25, 50, 75, 100], tick => tick.ToString("0", CultureInfo.InvariantCulture));
        frame.Across("frequency, Hz");
        canvas.Polyline(
            Enumerable.Range(1, Steps).Select(i => data.HighestHertz * i / Steps)
                .Select(hertz => (frame.X(hertz), frame.Y(100 * data.Left(Frequency.FromHertz(hertz))))),
            Palette.Blue);
        if (data.Limit is { } limit)
        {
            frame.Limit(100 * limit, Invariant($"limit {100 * limit:0.#} %"));
        }

        frame.Border();
        foreach (ModeMark mode in data.Modes)
        {
            double y = frame.Y(100 * data.Left(mode));
            canvas.Line(frame.X(mode.Hertz), frame.Top, frame.X(mode.Hertz), y, Palette.Vermilion, 1, mode.LeftOut ? "1 3" : "4 2");
            canvas.Circle(frame.X(mode.Hertz), y, 4, mode.LeftOut ? Palette.Paper : Palette.Vermilion, Palette.Vermilion);
        }

        labels.Draw(canvas);
        return new Figure(canvas.Finish(frame.End, Words(data)), Caption(data));
    }

    private static string Words(ResidualData data) =>
        $"Vibration that the sequence for axis {data.Axis} leaves, from 0 to {data.HighestHertz:0} Hz{Limit(data)}. {string.Join(", ", data.Modes.Select(mode => Invariant($"mode {mode.Number} at {mode.Hertz:0.0} Hz: {100 * data.Left(mode):0.0} %")))}.";

    private static string Caption(ResidualData data)
    {
        string hollow = data.Modes.Any(mode => mode.LeftOut) ? " Hollow: a mode that swings too little to count." : string.Empty;
        return Invariant($"How much of a vibration is left when each move is split into the {data.Pick.Sequence.Count} impulses chosen for axis {data.Axis}; 100 % is a move without them. Dots: at the modes, {100 * data.Pick.WorstResidual:0.0} % at worst within what is known of them{Limit(data)}.{hollow}");
    }

    private static string Limit(ResidualData data) => data.Limit is { } limit ? Invariant($", limit {100 * limit:0.#} %") : string.Empty;

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
