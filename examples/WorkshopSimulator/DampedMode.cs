namespace WorkshopSimulator;

/// <summary>One natural mode of the head along one axis.</summary>
/// <param name="FrequencyHertz">Undamped natural frequency.</param>
/// <param name="DampingRatio">Damping ratio.</param>
/// <param name="Weight">Acceleration in m/s² that a force of 1 gives this mode.</param>
public sealed record DampedMode(double FrequencyHertz, double DampingRatio, double Weight);
