namespace CommissioningPass.Pictures;

/// <summary>The bed from above to scale, front at the bottom; beside each screw its name and its turn.</summary>
internal static class BedPlanDrawing
{
    private const double LineHeight = 15;
    private const double Margin = 14;
    private const double WidestBed = 300;
    private const double TallestBed = 240;

    internal static Figure Draw(BedPlanData plan)
    {
        double[] xs = [.. plan.Supports.Select(s => s.X), .. plan.Probed.Select(p => p.X)];
        double[] ys = [.. plan.Supports.Select(s => s.Y), .. plan.Probed.Select(p => p.Y)];
        double scale = Math.Min(WidestBed / Math.Max(xs.Max() - xs.Min(), 1e-3), TallestBed / Math.Max(ys.Max() - ys.Min(), 1e-3));
        double left = (SvgCanvas.Width - ((xs.Max() - xs.Min()) * scale)) / 2;
        double X(double x) => left + ((x - xs.Min()) * scale);

        double middle = (ys.Max() + ys.Min()) / 2;
        SupportLabels rear = SupportLabels.Place(plan.Supports.Where(s => s.Y > middle), X);
        SupportLabels front = SupportLabels.Place(plan.Supports.Where(s => s.Y <= middle), X);
        double top = 24 + (rear.Lines * LineHeight) + Margin + 4;
        double bottom = top + ((ys.Max() - ys.Min()) * scale);
        double Y(double y) => bottom - ((y - ys.Min()) * scale);

        var canvas = new SvgCanvas();
        canvas.Text(4, 14, "The bed from above, front below", bold: true);
        canvas.Rectangle(left - Margin, top - Margin, ((xs.Max() - xs.Min()) * scale) + (2 * Margin), bottom - top + (2 * Margin), "#f4f4f4", Palette.Grey);
        double dot = plan.Probed.Count > 100 ? 1 : 2;
        foreach ((double x, double y) in plan.Probed)
        {
            canvas.Circle(X(x), Y(y), dot, Palette.Grey);
        }

        rear.Leaders(canvas, 24 + (rear.Lines * LineHeight) + 2, upwards: true, Y);
        front.Leaders(canvas, bottom + Margin + 2, upwards: false, Y);
        foreach (SupportMark support in plan.Supports)
        {
            Mark(canvas, X(support.X), Y(support.Y), support);
        }

        rear.Draw(canvas, 24 + (rear.Lines * LineHeight), upwards: true);
        front.Draw(canvas, bottom + Margin + 4, upwards: false);
        double end = bottom + Margin + 12 + (front.Lines * LineHeight);
        return new Figure(
            canvas.Finish(end, $"Plan of the bed from above, {xs.Max() - xs.Min():0} by {ys.Max() - ys.Min():0} mm, with {plan.Probed.Count} probed points. {string.Join("; ", plan.Supports.Select(support => support.Words))}."),
            "Which screw to turn, and which way as seen from the hand that turns. Triangle up: the bed goes up there; triangle down: it goes down; ring: leave it. Small dots: probed points.");
    }

    private static void Mark(SvgCanvas canvas, double x, double y, SupportMark support)
    {
        if (support.Leave)
        {
            canvas.Circle(x, y, 8, Palette.Paper, Palette.Ink);
            return;
        }

        double reach = support.Raises ? -9 : 9;
        canvas.Polygon([(x - 9, y - (reach * 0.7)), (x + 9, y - (reach * 0.7)), (x, y + reach)], support.Raises ? Palette.Blue : Palette.Vermilion);
    }
}
