namespace WorkshopSimulator;

/// <summary>What is true of the head that is tapped, and of the sensor on it.</summary>
/// <param name="ModesX">Modes along x, the largest first.</param>
/// <param name="ModesY">Modes along y, the largest first.</param>
/// <param name="TapSeconds">How long the hammer touches.</param>
/// <param name="RateHertz">Samples a second.</param>
/// <param name="NoiseMetresPerSecondSquared">Standard deviation of the sensor's noise.</param>
/// <param name="JitterSeconds">Standard deviation of the time of a sample about its beat.</param>
/// <param name="ClockError">Relative error of the clock that made the stamps: positive when it runs fast.</param>
/// <param name="LeanX">Sine of the sensor's lean along x.</param>
/// <param name="LeanY">Sine of the sensor's lean along y.</param>
public sealed record HeadTruth(
    IReadOnlyList<DampedMode> ModesX,
    IReadOnlyList<DampedMode> ModesY,
    double TapSeconds,
    double RateHertz,
    double NoiseMetresPerSecondSquared,
    double JitterSeconds,
    double ClockError,
    double LeanX,
    double LeanY);
