using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>A temperature that is needed, judged against the highest that is allowed.</summary>
/// <remarks>Caution: the maker's limits of hot end, filament and liner come first; above them plastic and liners give off harmful fumes.</remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class TemperatureNeed
{
    private readonly ReadOnlyCollection<Finding> _findings;
    private readonly MeasuredTemperature? _temperature;

    internal TemperatureNeed(MeasuredTemperature? temperature, IEnumerable<Finding> findings)
    {
        _temperature = temperature;
        _findings = findings.ToList().AsReadOnly();
    }

    /// <summary>The temperature.</summary>
    /// <exception cref="IndeterminateException">None serves, see <see cref="Findings"/>.</exception>
    public MeasuredTemperature Temperature => _temperature ?? throw new IndeterminateException(_findings.First(finding => finding.Severity == FindingSeverity.Blocking));

    /// <summary>What was noticed, see <see cref="MeltFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>The temperature, if one serves.</summary>
    /// <param name="temperature">The temperature, or the default.</param>
    /// <returns>Whether one serves.</returns>
    public bool TryGetTemperature(out MeasuredTemperature temperature)
    {
        temperature = _temperature ?? default;
        return _temperature is not null;
    }

    /// <summary>Judges what is left up to the highest temperature allowed.</summary>
    /// <param name="highest">The highest temperature that makers of hot end and filament allow.</param>
    /// <returns>The verdict on highest minus needed, which has to be at least zero.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is not above 0 K.</exception>
    /// <exception cref="IndeterminateException">No temperature serves.</exception>
    public Verdict<TemperatureDelta> Judge(Temperature highest)
    {
        MeasuredTemperature needed = Temperature;
        double left = Guard.Positive(highest.Kelvins, nameof(highest)) - needed.Value.Kelvins;
        return Tolerance.AtLeast(TemperatureDelta.Zero).Judge(Measured<TemperatureDelta>.FromSi(left, needed.StandardUncertainty.Kelvins, needed.DegreesOfFreedom));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The temperature, or the finding in its place.</returns>
    public override string ToString() => _temperature?.ToString() ?? _findings[0].ToString();
}
