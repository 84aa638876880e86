namespace WorkshopSimulator;

/// <summary>A row of acceleration.csv.</summary>
/// <param name="Time">Time stamp, s.</param>
/// <param name="X">Along x, m/s².</param>
/// <param name="Y">Along y, m/s².</param>
/// <param name="Z">Along z, m/s², gravity in it.</param>
public sealed record AccelerationSample(double Time, double X, double Y, double Z);
