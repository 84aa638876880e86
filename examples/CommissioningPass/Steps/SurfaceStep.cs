using CommissioningPass.Inputs;
using CommissioningPass.Pictures;
using CommissioningPass.Report;
using PrinterMath.Measurement;
using PrinterMath.SurfaceMesh;
using UnitsNet;

namespace CommissioningPass.Steps;

/// <summary>Third link: the bed's own shape, which no screw removes, and whether it asks for a map.</summary>
internal static class SurfaceStep
{
    /// <summary>Seed of the simulated probings behind the limits of the flatness; any other gives the same but for the last digit.</summary>
    private const int Seed = 1;

    private static readonly (ShapeTerm Term, string Name, string Label)[] Terms =
    [
        (ShapeTerm.Offset, "offset", "Mean height"),
        (ShapeTerm.TiltX, "tilt_x", "Tilt at x border"),
        (ShapeTerm.TiltY, "tilt_y", "Tilt at y border"),
        (ShapeTerm.BowX, "bow_x", "Bow along x"),
        (ShapeTerm.BowY, "bow_y", "Bow along y"),
        (ShapeTerm.Twist, "twist", "Twist at a corner"),
    ];

    private static readonly string[] Cautions =
    [
        "Hot bed: it burns, and its shape is that of its temperature. Probe it as hot as it prints and keep hands off.",
    ];

    internal static PassStep Take(IReadOnlyList<ProbePoint> probed, string file, Limits limits)
    {
        ShapeDecomposition shape = ShapeDecomposition.Fit(probed);
        Flatness flatness = Flatness.Of(probed, new FlatnessOptions { Seed = Seed });
        return new PassStep(
            "surface",
            "3. Surface map",
            [.. Shape(shape), .. Departure(flatness, limits.SurfaceFlatness)],
            [.. shape.Findings.Concat(flatness.Findings).Select(finding => (file, finding))],
            [.. Shares(shape), .. Correction(flatness)],
            Cautions)
        {
            ToDo = Decision(flatness, limits.SurfaceFlatness) == MapDecision.Needed ? ["A map is needed: the bed's own shape is too much for the first layer."] : [],
            LeaveAlone = Decision(flatness, limits.SurfaceFlatness) == MapDecision.NotNeeded ? ["No map is needed."] : [],
            WouldAdd = limits.SurfaceFlatness is null ? ["A row surface_flatness in limits.csv would add whether the bed needs a map."] : [],
            Pictures = [SurfaceData.Of(probed)],
        };
    }

    private static IEnumerable<PassEntry> Shape(ShapeDecomposition shape)
    {
        if (!shape.TryGetComponents(out _))
        {
            yield break;
        }

        foreach ((ShapeTerm term, string name, string label) in Terms)
        {
            ShapeComponent component = shape.Component(term);
            if (component.TryGetAmplitude(out Measured<Length> amplitude))
            {
                yield return PassEntry.Of("surface." + name, label, amplitude, "mm", Advice(component));
            }
        }
    }

    private static string? Advice(ShapeComponent component) => component switch
    {
        { Term: ShapeTerm.Offset } => null,
        { IsSignificant: false } => "no more than chance",
        { Term: ShapeTerm.TiltX or ShapeTerm.TiltY } => "step 2 removes it",
        _ => "no screw helps",
    };

    private static IEnumerable<PassEntry> Departure(Flatness flatness, Tolerance<Length>? limit)
    {
        if (!flatness.TryGetPeakToValley(out Measured<Length> peakToValley))
        {
            yield break;
        }

        PassEntry departure = limit is null
            ? PassEntry.Of("surface.flatness", "Peak to valley", peakToValley, "mm")
            : PassEntry.Judged("surface.flatness", "Peak to valley", MapNeed.Judge(flatness, limit).Verdict, "mm", Need(MapNeed.Judge(flatness, limit)));
        yield return departure.With(flatness.LowerLimit.Meters, flatness.UpperLimit.Meters);
    }

    private static MapDecision? Decision(Flatness flatness, Tolerance<Length>? limit) =>
        limit is not null && flatness.TryGetPeakToValley(out _) ? MapNeed.Judge(flatness, limit).Decision : null;

    private static string Need(MapNeed need) => need.Decision switch
    {
        MapDecision.NotNeeded => "no map is needed",
        MapDecision.Needed => "a map is needed",
        _ => $"map or none: {need.Verdict.Limitation}",
    };

    private static IEnumerable<string> Shares(ShapeDecomposition shape)
    {
        if (shape.TryGetComponents(out _))
        {
            yield return FormattableString.Invariant(
                $"Of the mean square height, tilts make up {shape.TiltShare * 100:0} %, bows and twist {shape.WarpShare * 100:0} %, and {shape.LeftOverShare * 100:0} % is left over.");
        }
    }

    private static IEnumerable<string> Correction(Flatness flatness)
    {
        if (flatness.TryGetPeakToValley(out _))
        {
            yield return FormattableString.Invariant(
                $"Peak to valley is corrected for probe noise, from {flatness.RawPeakToValley.Micrometers:0.0} µm as read, by simulated probings with seed {Seed}; its interval holds for any shape.");
        }
    }
}
