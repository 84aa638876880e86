using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>How modes are read from a spectrum.</summary>
public sealed record ModalFitOptions
{
    /// <summary>What the spectrum of a mode looks like.</summary>
    /// <value><see cref="ResponseShape.Transmissibility"/>.</value>
    public ResponseShape Shape { get; init; } = ResponseShape.Transmissibility;

    /// <summary>Most modes looked for.</summary>
    /// <value>6. From 1 to 12.</value>
    public int MostModes { get; init; } = 6;

    /// <summary>Probability that a spectrum of noise alone shows a mode or a tone, a ratio.</summary>
    /// <value>0.001. Greater than 0 and at most 0.1.</value>
    public double FalseAlarmProbability { get; init; } = 1e-3;

    /// <summary>Lowest frequency looked at.</summary>
    /// <value>Null: the fourth line of the spectrum, below which the taken-out mean reaches. At least that otherwise.</value>
    public Frequency? LowestFrequency { get; init; }

    /// <summary>Highest frequency looked at.</summary>
    /// <value>Null: 0.45 of the sample rate. Above the lowest and below half the sample rate otherwise.</value>
    public Frequency? HighestFrequency { get; init; }

    /// <summary>Relative standard uncertainty of the sample rate, a ratio: see <see cref="AccelerationRecord.RelativeRateUncertainty"/>.</summary>
    /// <value>0.0001. Zero or more, at most 0.1.</value>
    public double RelativeClockUncertainty { get; init; } = 1e-4;

    internal (int First, int Last) Lines(PowerSpectrum spectrum)
    {
        Guard.Between(MostModes, 1, 12, nameof(MostModes));
        Guard.Between(RelativeClockUncertainty, 0, 0.1, nameof(RelativeClockUncertainty));
        Guard.Between(FalseAlarmProbability, double.Epsilon, 0.1, nameof(FalseAlarmProbability));
        if (!Enum.IsDefined(Shape))
        {
            throw Guard.Out(nameof(Shape), Shape, "one of the named shapes");
        }

        double step = spectrum.ResolutionHertz, half = spectrum.SampleRateHertz / 2;
        double low = Guard.Between(LowestFrequency?.Hertz ?? (3 * step), 3 * step, half, nameof(LowestFrequency));
        double high = Guard.Between(HighestFrequency?.Hertz ?? (0.9 * half), 3 * step, half, nameof(HighestFrequency));
        (int first, int last) = ((int)Math.Ceiling((low / step) - 1e-9), Math.Min((int)((high / step) + 1e-9), (spectrum.Segments.Window.Length - 1) / 2));
        return last - first >= 15 ? (first, last) : throw Guard.Refused(
            nameof(HighestFrequency), FormattableString.Invariant($"From {low:G5} to {high:G5} Hz the spectrum has {Math.Max(0, last - first + 1)} lines; at least 16 are needed."));
    }
}
