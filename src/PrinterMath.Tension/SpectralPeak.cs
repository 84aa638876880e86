namespace PrinterMath.Tension;

/// <summary>A local maximum of a pluck's spectrum that noise alone would hardly make.</summary>
/// <param name="Frequency">Interpolated frequency in Hz.</param>
/// <param name="Power">Interpolated |X|².</param>
/// <param name="Excess">Level above the detection threshold in dB.</param>
/// <param name="Ratio">Power over the mean noise power, a ratio.</param>
internal readonly record struct SpectralPeak(double Frequency, double Power, double Excess, double Ratio);
