namespace WorkshopSimulator;

/// <summary>Prints walls and mating pieces on the invented extruder and tries them on the bench.</summary>
/// <remarks>
/// A bead is flat above and below with round sides. Its area is summed over thin strips of the layer, and the width that a flow gives is found by
/// halving, so that no closed formula is shared with the packages.
/// </remarks>
internal static class PrintedPieces
{
    private const int Strips = 20_000;
    private const int Readings = 8;
    private const int Trials = 12;
    private const double Step = 0.005;

    internal static ExtruderTruth Extruder(SeededRandom random)
    {
        double right = random.Between(0.93, 1);
        double area = Area(WallReading.BeadWidthMillimetres) * WallReading.Flow / right;
        return new ExtruderTruth(
            right,
            Width(area),
            random.Normal(0, WallReading.InstrumentMillimetres),
            right + random.Normal(-0.005, 0.01),
            random.Between(0.004, 0.012));
    }

    internal static WallReading[] Walls(ExtruderTruth extruder, SeededRandom random) =>
    [
        .. Enumerable.Range(0, Readings).Select(_ => new WallReading(Math.Round(
            Math.Round((extruder.WallMillimetres + extruder.CaliperErrorMillimetres + random.Normal(0, 0.008)) / WallReading.ResolutionMillimetres)
            * WallReading.ResolutionMillimetres, 3))),
    ];

    /// <summary>The bench goes down when a pair is tight and up when it goes together, by steps that halve.</summary>
    internal static FitReading[] Fits(ExtruderTruth extruder, SeededRandom random)
    {
        var trials = new FitReading[Trials];
        double flow = 0.96;
        double step = 0.04;
        for (int i = 0; i < Trials; i++)
        {
            trials[i] = new FitReading(flow, flow < random.Normal(extruder.FitFlow, extruder.FitDeviation));
            step = Math.Max(Step, step / 2);
            flow = Math.Round(Math.Round((flow + (trials[i].Fits ? step : -step)) / Step) * Step, 3);
        }

        return trials;
    }

    private static double Area(double width)
    {
        const double height = WallReading.LayerHeightMillimetres;
        double area = 0;
        for (int i = 0; i < Strips; i++)
        {
            double off = ((i + 0.5) / Strips * height) - (height / 2);
            double side = Math.Sqrt((height * height / 4) - (off * off));
            area += (width - height + (2 * side)) * height / Strips;
        }

        return area;
    }

    private static double Width(double area)
    {
        double low = WallReading.LayerHeightMillimetres;
        double high = 2;
        for (int i = 0; i < 50; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Area(middle) < area ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
