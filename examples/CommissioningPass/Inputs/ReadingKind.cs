namespace CommissioningPass.Inputs;

/// <summary>A quantity that readings.csv may hold, with the range (SI) in which a sound reading lies.</summary>
internal sealed record ReadingKind(string Quantity, UnitTable Units, double Lowest, double Highest, bool Needed = true)
{
    internal static readonly ReadingKind SpanA = new("span_a", UnitTable.Length, 0.02, 2);
    internal static readonly ReadingKind SpanB = new("span_b", UnitTable.Length, 0.02, 2);
    internal static readonly ReadingKind SampleMass = new("sample_mass", UnitTable.Mass, 1e-4, 0.2);
    internal static readonly ReadingKind SampleLength = new("sample_length", UnitTable.Length, 0.02, 20);
    internal static readonly ReadingKind FlexuralRigidity = new("flexural_rigidity", UnitTable.FlexuralRigidity, 1e-7, 1e-2, Needed: false);
    internal static readonly ReadingKind GaugeThickness = new("gauge_thickness", UnitTable.Length, 5e-6, 5e-3, Needed: false);

    internal static readonly ReadingKind[] All = [SpanA, SpanB, SampleMass, SampleLength, FlexuralRigidity, GaugeThickness];
}
