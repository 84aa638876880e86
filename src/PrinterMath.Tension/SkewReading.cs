using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>How far the cross-beam was out of square at a difference of tension.</summary>
/// <example><code>var before = new SkewReading(pair.Difference.Result, squareness);</code></example>
[DebuggerDisplay("{Skew} at {TensionDifference}")]
public sealed class SkewReading
{
    /// <summary>A reading.</summary>
    /// <param name="tensionDifference">T_A − T_B, of either sign.</param>
    /// <param name="skew">Departure of the beam from square, of either sign.</param>
    /// <exception cref="InvalidOperationException">A number was never measured.</exception>
    public SkewReading(Measured<Force> tensionDifference, Measured<Angle> skew)
    {
        Guard.Finite(tensionDifference.SiValue, nameof(tensionDifference));
        Guard.Finite(skew.SiValue, nameof(skew));
        TensionDifference = tensionDifference;
        Skew = skew;
    }

    /// <summary>T_A − T_B.</summary>
    public Measured<Force> TensionDifference { get; }

    /// <summary>Departure of the beam from square.</summary>
    public Measured<Angle> Skew { get; }
}
