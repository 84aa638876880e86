using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>One measure of flatness: as read, and corrected for the noise of the probe.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FlatnessDeviation
{
    private readonly double _raw;
    private readonly NoiseInversion? _corrected;
    private readonly Finding? _missing;

    internal FlatnessDeviation(double raw, NoiseInversion? corrected, Finding? missing)
    {
        _raw = raw;
        _corrected = corrected;
        _missing = missing;
    }

    /// <summary>As read, noise included.</summary>
    public Length Raw => Length.FromMeters(_raw);

    /// <summary>Corrected for noise: an estimate of what readings without noise would show, zero or more.</summary>
    /// <remarks>Its standard uncertainty is the distance to the farther limit over the normal quantile of the coverage.</remarks>
    /// <exception cref="IndeterminateException">The repeatability is not known.</exception>
    public Measured<Length> Corrected => Inversion.Corrected;

    /// <summary>Lower limit at the stated coverage, zero or more.</summary>
    /// <exception cref="IndeterminateException">The repeatability is not known.</exception>
    public Length LowerLimit => Length.FromMeters(Inversion.Lower);

    /// <summary>Upper limit at the stated coverage.</summary>
    /// <exception cref="IndeterminateException">The repeatability is not known.</exception>
    public Length UpperLimit => Length.FromMeters(Inversion.Upper);

    private NoiseInversion Inversion => _corrected ?? throw new IndeterminateException(_missing!);

    /// <summary>The corrected value, where the repeatability is known.</summary>
    /// <param name="corrected">The corrected value.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetCorrected(out Measured<Length> corrected)
    {
        corrected = _corrected?.Corrected ?? default;
        return _corrected is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Raw and corrected value.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{_raw * 1e6:G4} µm raw{(_corrected is null ? string.Empty : $", {_corrected.Corrected} corrected")}");
}
