using System.Globalization;
using CommissioningPass.Report;

namespace CommissioningPass.Pictures;

/// <summary>Height map: colour and number in each cell, and a labelled colour bar.</summary>
internal static class SurfaceDrawing
{
    private const double Left = 40;
    private const double Right = SvgCanvas.Width - 6;
    private const double Top = 24;
    private const double RowHeight = 30;

    internal static Figure Draw(SurfaceData surface)
    {
        var cells = HeightCells.Of(surface.Points);
        double low = cells.Filled.Min(cell => cell.Mean);
        double high = cells.Filled.Max(cell => cell.Mean);
        string format = high - low < 20 ? "+0.0;-0.0;0.0" : "+0;-0;0";
        double Share(double height) => high > low ? (height - low) / (high - low) : 0.5;
        string Write(double height) => Spelling.Minus(height.ToString(format, CultureInfo.InvariantCulture));

        var canvas = new SvgCanvas();
        canvas.Text(4, 14, "Height about the plane, µm", bold: true);
        double width = (Right - Left) / cells.Columns.Count;
        double bottom = Top + (RowHeight * cells.Rows.Count);
        for (int row = 0; row < cells.Rows.Count; row++)
        {
            double y = bottom - ((row + 1) * RowHeight);
            canvas.Text(Left - 6, y + 19, Place(cells.Rows[row]), TextAlign.Right);
            for (int column = 0; column < cells.Columns.Count; column++)
            {
                double x = Left + (column * width);
                bool read = cells.Cells[column, row] is not null;
                double height = cells.Cells[column, row]?.Mean ?? 0;
                canvas.Rectangle(x, y, width, RowHeight, read ? Palette.OfShare(Share(height)) : Palette.Paper, Palette.Paper);
                canvas.Text(x + (width / 2), y + 19, read ? Write(height) : "–", TextAlign.Middle, read ? Palette.TextOn(Share(height)) : Palette.Grey);
            }
        }

        for (int column = 0; column < cells.Columns.Count; column++)
        {
            canvas.Text(Left + ((column + 0.5) * width), bottom + 16, Place(cells.Columns[column]), TextAlign.Middle);
        }

        canvas.Text((Left + Right) / 2, bottom + 33, "x to the right, y to the rear, mm", TextAlign.Middle);
        Bar(canvas, bottom + 44, low, high, Write);
        return new Figure(canvas.Finish(bottom + 82, Words(surface, cells, Write)), Caption(surface, cells, Write));
    }

    private static void Bar(SvgCanvas canvas, double top, double low, double high, Func<double, string> write)
    {
        const int Steps = 40;
        double width = (Right - Left) / Steps;
        for (int i = 0; i < Steps; i++)
        {
            canvas.Rectangle(Left + (i * width), top, width + 0.5, 14, Palette.OfShare((i + 0.5) / Steps));
        }

        canvas.Text(Left, top + 30, write(low) + " µm");
        canvas.Text((Left + Right) / 2, top + 30, write((low + high) / 2) + " µm", TextAlign.Middle);
        canvas.Text(Right, top + 30, write(high) + " µm", TextAlign.Right);
    }

    private static string Words(SurfaceData surface, HeightCells cells, Func<double, string> write) =>
        $"Height map of the bed about its plane from {surface.Points.Count} readings, in {cells.Columns.Count} columns and {cells.Rows.Count} rows, {Extremes(surface, write)}.";

    private static string Caption(SurfaceData surface, HeightCells cells, Func<double, string> write)
    {
        int most = cells.Filled.Max(cell => cell.Count);
        string each = most > 1 ? $" Each number is the mean of up to {most} readings." : string.Empty;
        return $"The bed's own shape, which no screw removes: how far it lies above (+) or below (−) its plane, seen from above, front below.{each} Single readings: {Extremes(surface, write)}.";
    }

    private static string Extremes(SurfaceData surface, Func<double, string> write)
    {
        (double X, double Y, double Height) lowest = surface.Points.MinBy(point => point.Height);
        (double X, double Y, double Height) highest = surface.Points.MaxBy(point => point.Height);
        return $"lowest {write(lowest.Height)} µm at x {Place(lowest.X)}, y {Place(lowest.Y)} mm, highest {write(highest.Height)} µm at x {Place(highest.X)}, y {Place(highest.Y)} mm";
    }

    private static string Place(double millimetres) => Spelling.Minus(Math.Round(millimetres, 1).ToString(Math.Abs(millimetres) < 100 ? "0.#" : "0", CultureInfo.InvariantCulture));
}
