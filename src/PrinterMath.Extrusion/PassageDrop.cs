using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>What one piece of a <see cref="MeltPath"/> takes of the pressure.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PassageDrop
{
    private readonly double _pascals, _rate;

    internal PassageDrop(string name, double pascals, double rate)
    {
        Name = name;
        _pascals = pascals;
        _rate = rate;
    }

    /// <summary>Name of the piece.</summary>
    public string Name { get; }

    /// <summary>Pressure over it; the uncertainty is that of the whole, see <see cref="PressureDrop.Budget"/>.</summary>
    public Pressure Drop => Pressure.FromPascals(_pascals);

    /// <summary>True shear rate at its wall, where it is narrowest.</summary>
    public Frequency WallShearRate => Frequency.FromPerSecond(_rate);

    /// <summary>Invariant text.</summary>
    /// <returns>Name, pressure and shear rate.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name}: {_pascals / 1e6:G3} MPa at {_rate:G3} 1/s");
}
