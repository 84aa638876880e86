using CommissioningPass.Inputs;
using PrinterMath.Measurement;
using PrinterMath.Tension;
using UnitsNet;

namespace CommissioningPass.Pictures;

/// <summary>The sound of a plucked belt and the partials heard in it.</summary>
internal sealed record PluckData(string Belt, string File, SpectrumCurve Spectrum, IReadOnlyList<Partial> Partials, Measured<Frequency> Fundamental) : PictureData
{
    private const double ResolutionHertz = 3;

    internal static PluckData Of(string belt, Recording recording, PluckReading pluck) => new(
        belt, recording.File, SpectrumCurve.Of(recording.Signal, Duration.Zero, ResolutionHertz), pluck.Partials, pluck.Fundamental);
}
