namespace WorkshopSimulator;

/// <summary>A row of probe.csv, in millimetres.</summary>
/// <param name="X">x.</param>
/// <param name="Y">y.</param>
/// <param name="Z">Height, positive upwards.</param>
/// <param name="StandardUncertainty">Repeatability and resolution together.</param>
public sealed record ProbedHeight(double X, double Y, double Z, double StandardUncertainty);
