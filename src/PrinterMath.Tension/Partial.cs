using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>One partial of a pluck: its number, frequency, level and, where it could be followed, its decay.</summary>
/// <remarks>A recorder that levels its gain falsifies level and decay, not the frequency.</remarks>
/// <example><code>foreach (Partial p in reading.Partials) { Console.WriteLine($"{p.Number}: {p.Frequency.Hertz:F2} Hz"); }</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Partial
{
    private readonly double _hertz;
    private readonly double _decibels;
    private readonly double? _decaySeconds;

    internal Partial(int number, double hertz, double decibels, double deviation, bool fits, double? decaySeconds)
    {
        Number = number;
        _hertz = hertz;
        _decibels = decibels;
        RelativeDeviation = deviation;
        Fits = fits;
        _decaySeconds = decaySeconds > 0 ? decaySeconds : null;
    }

    /// <summary>Partial number n; 1 is the fundamental.</summary>
    public int Number { get; }

    /// <summary>Measured frequency f_n.</summary>
    public Frequency Frequency => Frequency.FromHertz(_hertz);

    /// <summary>Level relative to the strongest partial, 0 dB or below.</summary>
    public Level Level => Level.FromDecibels(_decibels);

    /// <summary>(measured − fitted)/fitted frequency, a ratio; positive when the partial is sharper than the stiff-string law.</summary>
    public double RelativeDeviation { get; }

    /// <summary>Whether the partial carries full weight in the fit; false for a stray that was weighed down.</summary>
    public bool Fits { get; }

    /// <summary>Time in which the amplitude falls to 1/e.</summary>
    /// <param name="decay">The time, when true is returned.</param>
    /// <returns>
    /// Whether the partial was strong enough to be followed, decays, and nothing falsified its decay: false for every partial of a reading with
    /// <see cref="PluckFindings.Gated"/>, <see cref="PluckFindings.LevelControlled"/>, <see cref="PluckFindings.Beats"/> or clipping beyond the attack.
    /// </returns>
    public bool TryGetDecayTime(out Duration decay)
    {
        decay = _decaySeconds is { } seconds ? Duration.FromSeconds(seconds) : default;
        return _decaySeconds is not null;
    }

    internal Partial WithoutDecay() => new(Number, _hertz, _decibels, RelativeDeviation, Fits, null);

    /// <summary>Number, frequency and level, invariant.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Number}: {_hertz:F3} Hz, {_decibels:F1} dB");
}
