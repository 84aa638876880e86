namespace WorkshopSimulator;

/// <summary>What is true of nozzle and bed when they meet.</summary>
/// <param name="ColdMillimetres">Height of the axis at which the bare nozzle touches the cold bed.</param>
/// <param name="HotMillimetres">The same with both as hot as in printing.</param>
/// <param name="GaugeMillimetres">Thickness of the gauge laid between.</param>
/// <param name="SpreadMillimetres">How far trials of the same height differ: the spread of the logistic curve.</param>
public sealed record ContactTruth(double ColdMillimetres, double HotMillimetres, double GaugeMillimetres, double SpreadMillimetres);
