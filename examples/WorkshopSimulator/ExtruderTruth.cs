namespace WorkshopSimulator;

/// <summary>What is true of the extruder and of two pieces that should fit.</summary>
/// <param name="RightFlow">Flow at which a bead has the area that was commanded.</param>
/// <param name="WallMillimetres">Width of the bead printed at the present flow.</param>
/// <param name="CaliperErrorMillimetres">What the caliper reads too much.</param>
/// <param name="FitFlow">Flow at which half of the pieces fit.</param>
/// <param name="FitDeviation">Standard deviation of that flow from print to print.</param>
public sealed record ExtruderTruth(double RightFlow, double WallMillimetres, double CaliperErrorMillimetres, double FitFlow, double FitDeviation);
