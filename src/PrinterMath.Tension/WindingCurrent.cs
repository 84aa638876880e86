using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Current of one winding of a two-phase motor, which never leaves open whether the number is the RMS or the peak of the sine.</summary>
/// <remarks>I_peak = √2·I_rms. A motor rated at I with both phases on holds with the same strength as a sine of I_rms = I. The default is no current.</remarks>
/// <example><code>WindingCurrent run = WindingCurrent.FromRms(ElectricCurrent.FromAmperes(1.0));</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public readonly record struct WindingCurrent
{
    private readonly double _rms;

    private WindingCurrent(double rms) => _rms = rms;

    /// <summary>Root mean square of the sine.</summary>
    public ElectricCurrent Rms => ElectricCurrent.FromAmperes(_rms);

    /// <summary>Peak of the sine.</summary>
    public ElectricCurrent Peak => ElectricCurrent.FromAmperes(AmperesPeak);

    internal double AmperesRms => _rms;

    internal double AmperesPeak => _rms * Math.Sqrt(2);

    /// <summary>A current from its RMS.</summary>
    /// <param name="current">Zero or more.</param>
    /// <returns>The current.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The current is negative.</exception>
    public static WindingCurrent FromRms(ElectricCurrent current) => new(Guard.NonNegative(current.Amperes, nameof(current)));

    /// <summary>A current from its peak.</summary>
    /// <param name="current">Zero or more.</param>
    /// <returns>The current.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The current is negative.</exception>
    public static WindingCurrent FromPeak(ElectricCurrent current) => new(Guard.NonNegative(current.Amperes, nameof(current)) / Math.Sqrt(2));

    /// <summary>Invariant text.</summary>
    /// <returns>The RMS.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{_rms:0.###} A RMS");
}
