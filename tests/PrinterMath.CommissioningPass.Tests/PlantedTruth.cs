using WorkshopSimulator;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>What each entry of the record should say, from the simulated machine itself and in SI, by name of the entry.</summary>
internal static class PlantedTruth
{
    private const double Millimetre = 1e-3;

    /// <summary>Middle of the simulated owner's limits of tension, 25 to 45 N: the aim where the drive has no window.</summary>
    private const double MiddleNewtons = 35;

    internal static Dictionary<string, double> Of(WorkshopVisit visit, IReadOnlyList<RecordEntry> entries, IReadOnlyDictionary<string, double> settings)
    {
        double target = settings.GetValueOrDefault("tension.target", MiddleNewtons);
        StiffSpan a = visit.BeltA.Span;
        StiffSpan b = visit.BeltB.Span;
        var truth = new Dictionary<string, double>
        {
            ["tension.linear_density"] = a.KilogramsPerMetre,
            ["tension.a.frequency"] = visit.BeltA.PartialsHertz[0],
            ["tension.b.frequency"] = visit.BeltB.PartialsHertz[0],
            ["tension.a.tension"] = a.TensionNewtons,
            ["tension.b.tension"] = b.TensionNewtons,
            ["tension.difference"] = (a.TensionNewtons - b.TensionNewtons) / ((a.TensionNewtons + b.TensionNewtons) / 2),
            ["tension.a.target_frequency"] = Hertz(a, target),
            ["tension.b.target_frequency"] = Hertz(b, target),
        };
        AddDrive(truth, visit, target, settings);
        AddBed(truth, visit, entries);
        truth["tramming.zero.contact"] = visit.Contact.ColdMillimetres * Millimetre;
        truth["tramming.zero.growth"] = (visit.Contact.HotMillimetres - visit.Contact.ColdMillimetres) * Millimetre;
        truth["tramming.zero.height"] = visit.Contact.HotMillimetres * Millimetre;
        PlantedTurns.Add(truth, visit, entries);
        AddSurface(truth, visit);
        AddModes(truth, "x", visit.Head.ModesX, entries);
        AddModes(truth, "y", visit.Head.ModesY, entries);
        AddExtruder(truth, visit.Extruder);
        return truth;
    }

    private static double Hertz(StiffSpan span, double newtons) => (span with { TensionNewtons = newtons }).Modes(1)[0].FrequencyHertz;

    private static void AddDrive(Dictionary<string, double> truth, WorkshopVisit visit, double target, IReadOnlyDictionary<string, double> settings)
    {
        var planted = new PlantedDrive(visit.Drive, target);
        (StiffSpan spanA, StiffSpan spanB) = (visit.BeltA.Span, visit.BeltB.Span);
        (double a, double b) = (spanA.TensionNewtons, spanB.TensionNewtons);
        double gain = visit.Drive.GainPerTurn;
        double thenA = a + (gain * settings.GetValueOrDefault("tension.a.turns_now"));
        double thenB = b + (gain * settings.GetValueOrDefault("tension.b.turns_now"));
        (double lowest, double highest) = planted.Modes();
        foreach ((string name, double value) in new[]
        {
            ("window.lower", planted.Lower), ("window.upper", planted.Upper),
            ("window.a.lower_frequency", Hertz(spanA, planted.Lower)), ("window.b.lower_frequency", Hertz(spanB, planted.Lower)),
            ("window.a.upper_frequency", Hertz(spanA, planted.Upper)), ("window.b.upper_frequency", Hertz(spanB, planted.Upper)),
            ("a.acceleration", planted.ServedBy(a)), ("b.acceleration", planted.ServedBy(b)),
            ("a.window", a), ("b.window", b), ("a.turns", (target - a) / gain), ("b.turns", (target - b) / gain),
            ("predicted_difference", 2 * (thenA - thenB) / (thenA + thenB)),
            ("motor.required", planted.Required), ("motor.reserve", planted.Reserve), ("motor.acceleration", planted.Acceleration),
            ("axis.lowest_frequency", lowest), ("axis.highest_frequency", highest),
            ("axis.scale_change", (target - ((a + b) / 2)) / visit.Drive.AxialStiffness),
        })
        {
            truth["tension." + name] = value;
        }
    }

    private static void AddBed(Dictionary<string, double> truth, WorkshopVisit visit, IReadOnlyList<RecordEntry> entries)
    {
        BedTruth bed = visit.Bed;
        double side = 2 * BedTruth.Reach * Millimetre;
        truth["tramming.tilt_about_x"] = Math.Atan(bed.SlopeY);
        truth["tramming.tilt_about_y"] = -Math.Atan(bed.SlopeX);
        truth["tramming.height_spread"] = side * (Math.Abs(bed.SlopeX) + Math.Abs(bed.SlopeY));
        AddScrews(truth, visit);

        double readX = -Math.Tan(entries.First(e => e.Name == "tramming.tilt_about_y").Value);
        double readY = Math.Tan(entries.First(e => e.Name == "tramming.tilt_about_x").Value);
        truth["tramming.predicted_spread"] = side * (Math.Abs(bed.SlopeX - readX) + Math.Abs(bed.SlopeY - readY));

        double corner = (BedTruth.Centre - visit.Screws[0].X) / BedTruth.Reach;
        truth["tramming.twist"] = bed.TwistMillimetres * corner * corner * Millimetre;
    }

    /// <summary>
    /// Terms of Legendre polynomials, by hand: u² = (2 P₂(u) + 1)/3, so bow·(u² + v² − 1) = bow·(2/3 P₂(u) + 2/3 P₂(v) − 1/3). The shape does not tilt the
    /// square grid, so its own range at the probed places is the peak to valley about the plane.
    /// </summary>
    private static void AddSurface(Dictionary<string, double> truth, WorkshopVisit visit)
    {
        BedTruth bed = visit.BedThen;
        truth["surface.offset"] = (bed.OffsetMillimetres - (bed.BowMillimetres / 3)) * Millimetre;
        truth["surface.tilt_x"] = bed.SlopeX * BedTruth.Reach * Millimetre;
        truth["surface.tilt_y"] = bed.SlopeY * BedTruth.Reach * Millimetre;
        truth["surface.bow_x"] = bed.BowMillimetres * 2 / 3 * Millimetre;
        truth["surface.bow_y"] = truth["surface.bow_x"];
        truth["surface.twist"] = bed.TwistMillimetres * Millimetre;
        double[] shape = [.. visit.Probed.Select(place => bed.ShapeAt(place.X, place.Y))];
        truth["surface.flatness"] = (shape.Max() - shape.Min()) * Millimetre;
    }

    /// <summary>Modes stand in the order of their swing, which a weak one may change; each is compared with the planted mode nearest in frequency.</summary>
    private static void AddModes(Dictionary<string, double> truth, string axis, IReadOnlyList<DampedMode> planted, IReadOnlyList<RecordEntry> entries)
    {
        const string ending = ".frequency";
        foreach (RecordEntry entry in entries.Where(e => e.Name.StartsWith($"resonance.{axis}.", StringComparison.Ordinal) && e.Name.EndsWith(ending, StringComparison.Ordinal)))
        {
            DampedMode mode = planted.MinBy(m => Math.Abs(m.FrequencyHertz - entry.Value))!;
            truth[entry.Name] = mode.FrequencyHertz;
            truth[entry.Name[..^ending.Length] + ".damping_ratio"] = mode.DampingRatio;
        }
    }

    private static void AddExtruder(Dictionary<string, double> truth, ExtruderTruth extruder)
    {
        truth["extrusion.wall"] = extruder.WallMillimetres * Millimetre;
        truth["extrusion.flow_factor"] = extruder.RightFlow / WallReading.Flow;
        truth["extrusion.flow"] = extruder.RightFlow;
        truth["extrusion.fit_flow"] = extruder.FitFlow;
        truth["extrusion.fit_minus_wall"] = extruder.FitFlow - extruder.RightFlow;
    }

    private static void AddScrews(Dictionary<string, double> truth, WorkshopVisit visit)
    {
        double mean = visit.Screws.Average(PlaneAt);
        foreach (BedScrew screw in visit.Screws)
        {
            string name = "tramming.screw." + screw.Name.Replace(' ', '_');
            double lead = screw.Thread == "M3" ? 0.5 : 0.7;
            double change = mean - PlaneAt(screw);
            truth[name + ".height_change"] = change * Millimetre;
            truth[name + ".rotation"] = Math.Abs(change) / lead * 2 * Math.PI;
        }

        double PlaneAt(BedScrew screw) =>
            (visit.Bed.SlopeX * (screw.X - BedTruth.Centre)) + (visit.Bed.SlopeY * (screw.Y - BedTruth.Centre));
    }
}
