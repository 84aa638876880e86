namespace CommissioningPass.Inputs;

/// <summary>The units a column may name (UCUM), each with its size in SI.</summary>
internal sealed class UnitTable
{
    internal static readonly UnitTable Length = new(("mm", 1e-3), ("um", 1e-6), ("cm", 1e-2), ("m", 1));
    internal static readonly UnitTable Mass = new(("g", 1e-3), ("mg", 1e-6), ("kg", 1));
    internal static readonly UnitTable LinearDensity = new(("g/m", 1e-3), ("kg/m", 1));
    internal static readonly UnitTable Force = new(("N", 1), ("kN", 1e3));
    internal static readonly UnitTable FlexuralRigidity = new(("N.m2", 1), ("N.mm2", 1e-6));
    internal static readonly UnitTable Speed = new(("mm/s", 1e-3), ("m/s", 1));
    internal static readonly UnitTable Acceleration = new(("m/s2", 1), ("mm/s2", 1e-3));
    internal static readonly UnitTable ForcePerLength = new(("N/mm", 1e3), ("kN/mm", 1e6));
    internal static readonly UnitTable Torque = new(("N.m", 1), ("N.cm", 1e-2), ("mN.m", 1e-3));
    internal static readonly UnitTable Current = new(("A", 1), ("mA", 1e-3));
    internal static readonly UnitTable Resistance = new(("Ohm", 1));
    internal static readonly UnitTable Inductance = new(("mH", 1e-3), ("H", 1));
    internal static readonly UnitTable Voltage = new(("V", 1));
    internal static readonly UnitTable Inertia = new(("g.cm2", 1e-7), ("kg.m2", 1));
    internal static readonly UnitTable Frequency = new(("Hz", 1));
    internal static readonly UnitTable Count = new(("1", 1));
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
