using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>What a mode still does when a command has ended: the ripple that it writes on a wall.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ModeResidual
{
    private readonly double _meters;

    internal ModeResidual(ModeShare mode, double meters)
    {
        Mode = mode;
        _meters = meters;
    }

    /// <summary>The mode.</summary>
    public ModeShare Mode { get; }

    /// <summary>Amplitude of the tool's swing about its place when the command ends, √(q² + ((q′ + ζωq)/ω_d)²) times the share; half the height from crest to trough.</summary>
    public Length Amplitude => Length.FromMeters(_meters);

    /// <summary>Frequency at which it swings, f_n·√(1 − ζ²).</summary>
    public Frequency DampedFrequency => Frequency.FromHertz(DampedHertz);

    private double DampedHertz => Mode.Hertz * Math.Sqrt(1 - (Mode.DampingRatio * Mode.DampingRatio));

    /// <summary>Amplitude a time after the end of the command.</summary>
    /// <param name="time">Time since the end, zero or more.</param>
    /// <returns>Amplitude·exp(−ζω·t).</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative.</exception>
    public Length AmplitudeAfter(Duration time) =>
        Length.FromMeters(_meters * Math.Exp(-Mode.DampingRatio * 2 * Math.PI * Mode.Hertz * Guard.NonNegative(time.Seconds, nameof(time))));

    /// <summary>Distance from crest to crest on a wall that is printed at a steady speed.</summary>
    /// <param name="speed">Speed along the wall, greater than zero.</param>
    /// <returns>λ = v/f_d.</returns>
    /// <remarks>Ripple on a print is lower than the tool's swing, since the bead smooths it; its wavelength is the tool's.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not positive.</exception>
    public Length Wavelength(Speed speed) => Length.FromMeters(Guard.Positive(speed.MetersPerSecond, nameof(speed)) / DampedHertz);

    /// <summary>Ratio of the heights of successive ripples, exp(−2πζ/√(1 − ζ²)).</summary>
    public double RatioOfSuccessiveRipples => Math.Exp(-2 * Math.PI * Mode.DampingRatio / Math.Sqrt(1 - (Mode.DampingRatio * Mode.DampingRatio)));

    /// <summary>Invariant text.</summary>
    /// <returns>Amplitude and frequency.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{_meters * 1e6:G4} µm at {DampedHertz:G5} Hz");
}
