using PrinterMath.Resonance;

namespace CommissioningPass.Pictures;

/// <summary>What the chosen sequence leaves of a vibration.</summary>
/// <param name="Axis">x or y.</param>
/// <param name="Pick">The sequence.</param>
/// <param name="Modes">The modes, the largest swing first; at least one.</param>
/// <param name="Limit">Vibration that may be left, a ratio; null when the owner states none.</param>
/// <param name="HighestHertz">Where the picture ends.</param>
internal sealed record ResidualData(string Axis, SequenceCandidate Pick, IReadOnlyList<ModeMark> Modes, double? Limit, double HighestHertz) : PictureData
{
    /// <summary>Share left at a frequency, with the damping of the mode that swings most.</summary>
    internal double Left(UnitsNet.Frequency frequency) => Pick.Sequence.ResidualVibration(frequency, Modes[0].Mode.DampingRatio.Value);

    /// <summary>Share left of a mode, with its own damping.</summary>
    internal double Left(ModeMark mark) => Pick.Sequence.ResidualVibration(mark.Mode.Frequency.Value, mark.Mode.DampingRatio.Value);
}
