namespace CommissioningPass.Pictures;

/// <summary>How an axis rings after the tap.</summary>
/// <param name="Axis">x or y.</param>
/// <param name="Spectrum">Power spectral density of the decay.</param>
/// <param name="Unit">Unit of the recording.</param>
/// <param name="Modes">The modes found, the largest swing first.</param>
internal sealed record SpectrumData(string Axis, SpectrumCurve Spectrum, string Unit, IReadOnlyList<ModeMark> Modes) : PictureData
{
    /// <summary>A third beyond the highest mode, as far as the recording reaches.</summary>
    internal static double HighestHertz(SpectrumCurve spectrum, IReadOnlyList<ModeMark> modes) =>
        Math.Min(spectrum.HighestHertz, 1.33 * modes.Select(mode => mode.Hertz).DefaultIfEmpty(150).Max());
}
