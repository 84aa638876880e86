namespace WorkshopSimulator;

/// <summary>A row of walls.csv.</summary>
/// <param name="ThicknessMillimetres">What the caliper read on a wall of one bead.</param>
public sealed record WallReading(double ThicknessMillimetres)
{
    /// <summary>Commanded width of the bead.</summary>
    public const double BeadWidthMillimetres = 0.45;

    /// <summary>Layer height.</summary>
    public const double LayerHeightMillimetres = 0.2;

    /// <summary>Flow the wall was printed at.</summary>
    public const double Flow = 0.97;

    /// <summary>Step of the caliper.</summary>
    public const double ResolutionMillimetres = 0.01;

    /// <summary>Standard uncertainty of the caliper.</summary>
    public const double InstrumentMillimetres = 0.005;
}
