using CommissioningPass.Inputs;
using CommissioningPass.Report;
using CommissioningPass.Steps;
using PrinterMath.Extrusion;
using PrinterMath.Tramming;

namespace CommissioningPass;

/// <summary>The commissioning pass: each link in the order in which the next one needs it.</summary>
internal static class Pass
{
    /// <summary>Reads and checks every file first, then goes through the links.</summary>
    internal static IReadOnlyList<PassStep> Make(string folder)
    {
        if (!Directory.Exists(folder))
        {
            throw new InputException(folder, null, "the folder is missing.");
        }

        Readings readings = Readings.Read(folder);
        Limits limits = Limits.Read(folder);
        var probed = ProbeReadings.Read(folder);
        var screws = BedScrew.Read(folder);
        LaterPasses? later = LaterPasses.Read(folder, screws);
        IReadOnlyList<ContactTrial>? contact = ContactReadings.Read(folder);
        Warming warming = Warming.Read(folder);
        Recording beltA = Recording.Read(folder, "belt-a.wav");
        Recording beltB = Recording.Read(folder, "belt-b.wav");
        TapRecording? tapped = TapRecording.Read(folder);
        var drive = DriveReadings.Read(folder);
        WallReadings? wall = WallReadings.Read(folder);
        FitSeries? fit = FitReadings.Read(folder, limits);
        return
        [
            TensionStep.Take(beltA, beltB, readings, limits, drive),
            ZeroHeight.Add(TrammingStep.Take(probed, later, screws, limits), contact, readings, warming),
            SurfaceStep.Take(later?.Newest ?? probed, later is null ? ProbeReadings.File : LaterPasses.File, limits),
            .. tapped is null ? Array.Empty<PassStep>() : [ResonanceStep.Take(tapped, limits)],
            .. wall is null && fit is null ? Array.Empty<PassStep>() : [ExtrusionStep.Take(wall, fit)],
        ];
    }
}
