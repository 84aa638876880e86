namespace WorkshopSimulator;

/// <summary>One visit to the invented machine: what is true and what was read.</summary>
public sealed class WorkshopVisit
{
    internal WorkshopVisit(
        ulong seed,
        BeltTruth beltA,
        BeltTruth beltB,
        BedTruth bed,
        HeadTruth head,
        float[] recordingA,
        float[] recordingB,
        IReadOnlyList<Reading> readings,
        IReadOnlyList<ProbedHeight> probed,
        IReadOnlyList<BedScrew> screws,
        IReadOnlyList<AccelerationSample> tapped)
    {
        Seed = seed;
        BeltA = beltA;
        BeltB = beltB;
        Bed = bed;
        Head = head;
        RecordingA = recordingA;
        RecordingB = recordingB;
        Readings = readings;
        Probed = probed;
        Screws = screws;
        Tapped = tapped;
    }

    /// <summary>The seed everything comes from.</summary>
    public ulong Seed { get; }

    /// <summary>Truth of belt A.</summary>
    public BeltTruth BeltA { get; }

    /// <summary>Truth of belt B.</summary>
    public BeltTruth BeltB { get; }

    /// <summary>Truth of the bed.</summary>
    public BedTruth Bed { get; }

    /// <summary>Truth of the head that is tapped.</summary>
    public HeadTruth Head { get; }

    /// <summary>Recording of belt A, full scale 1, <see cref="SampleRateHertz"/>.</summary>
    public float[] RecordingA { get; }

    /// <summary>Recording of belt B.</summary>
    public float[] RecordingB { get; }

    /// <summary>Sample rate of both recordings.</summary>
    public int SampleRateHertz => PluckedRecording.SampleRate;

    /// <summary>Ruler and scale readings.</summary>
    public IReadOnlyList<Reading> Readings { get; }

    /// <summary>Probe readings.</summary>
    public IReadOnlyList<ProbedHeight> Probed { get; }

    /// <summary>The bed screws.</summary>
    public IReadOnlyList<BedScrew> Screws { get; }

    /// <summary>Acceleration of the tapped head.</summary>
    public IReadOnlyList<AccelerationSample> Tapped { get; }

    /// <summary>Truth of nozzle and bed in contact.</summary>
    public required ContactTruth Contact { get; init; }

    /// <summary>Trials of contact.</summary>
    public required IReadOnlyList<ContactTrial> ContactTrials { get; init; }

    /// <summary>What the owner knows of the parts that grow.</summary>
    public required IReadOnlyList<WarmedPart> Warmed { get; init; }

    /// <summary>What a turn of each screw really does.</summary>
    public required IReadOnlyList<ScrewTruth> ScrewMoves { get; init; }

    /// <summary>What the owner turned after the first probing.</summary>
    public required IReadOnlyList<MadeTurn> Turned { get; init; }

    /// <summary>Truth of the bed after those turns.</summary>
    public required BedTruth BedThen { get; init; }

    /// <summary>Probe readings after those turns.</summary>
    public required IReadOnlyList<ProbedHeight> ProbedAgain { get; init; }

    /// <summary>Truth of the extruder.</summary>
    public required ExtruderTruth Extruder { get; init; }

    /// <summary>Caliper readings of a wall.</summary>
    public required IReadOnlyList<WallReading> Walls { get; init; }

    /// <summary>Trials of a fit.</summary>
    public required IReadOnlyList<FitReading> Fits { get; init; }

    /// <summary>Truth of the crossed drive.</summary>
    public required DriveTruth Drive { get; init; }

    /// <summary>What is stated of the drive.</summary>
    public required IReadOnlyList<DriveReading> DriveReadings { get; init; }

    /// <summary>What the invented machine's owner allows; the same for every seed.</summary>
    public IReadOnlyList<Limit> Limits { get; } =
    [
        new("belt_tension", 25, 45, "N"),
        new("belt_tension_difference", -10, 10, "%"),
        new("first_layer_spread", null, 0.15, "mm"),
        new("surface_flatness", null, 0.1, "mm"),
        new("ringing_residual", null, 5, "%"),
        new("path_deviation", null, 0.2, "mm"),
        new("fit_flow", 0.88, 1.04, "1"),
    ];
}
