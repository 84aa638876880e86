using PrinterMath.Measurement;

namespace CommissioningPass.Inputs;

/// <summary>What one axis of the tapped head recorded.</summary>
/// <param name="Name">x or y.</param>
/// <param name="Signal">Acceleration, evenly sampled: in m/s², or in the sensor's own unit when that is not known.</param>
internal sealed record TapAxis(string Name, SampledSignal Signal);
