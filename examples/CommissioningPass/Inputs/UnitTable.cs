namespace CommissioningPass.Inputs;

/// <summary>The units a column may name (UCUM), each with its size in SI.</summary>
internal sealed class UnitTable
{
    internal static readonly UnitTable Length = new(("mm", 1e-3), ("um", 1e-6), ("cm", 1e-2), ("m", 1));
    internal static readonly UnitTable Mass = new(("g", 1e-3), ("mg", 1e-6), ("kg", 1));
    internal static readonly UnitTable LinearDensity = new(("g/m", 1e-3), ("kg/m", 1));
    internal static readonly UnitTable Force = new(("N", 1), ("kN", 1e3));
    internal static readonly UnitTable FlexuralRigidity = new(("N.m2", 1), ("N.mm2", 1e-6));
    internal static readonly UnitTable Ratio = new(("%", 1e-2), ("1", 1));

    private readonly (string Unit, double Si)[] _units;

    private UnitTable(params (string Unit, double Si)[] units) => _units = units;

    internal double SizeOf(CsvRow row)
    {
        string unit = row.Text("unit");
        foreach ((string known, double si) in _units)
        {
            if (known == unit)
            {
                return si;
            }
        }

        throw row.Fault($"the unit '{unit}' does not fit {row.Text("quantity")}; it is one of {string.Join(", ", _units.Select(u => u.Unit))}.");
    }
}
