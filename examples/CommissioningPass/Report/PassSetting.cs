namespace CommissioningPass.Report;

/// <summary>A number that was chosen, not measured: it has no uncertainty of its own.</summary>
/// <param name="Name">Stable dotted name for machines.</param>
/// <param name="Value">The number.</param>
/// <param name="UcumUnit">Its unit.</param>
internal sealed record PassSetting(string Name, double Value, string UcumUnit);
