using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>A mode as a simulation takes it: frequency, damping, and the share of the tool's motion that goes through it.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ModeShare
{
    private ModeShare(double hertz, double dampingRatio, double share)
    {
        Hertz = hertz;
        DampingRatio = dampingRatio;
        Share = share;
    }

    /// <summary>Natural frequency f_n.</summary>
    public Frequency Frequency => Frequency.FromHertz(Hertz);

    /// <summary>Damping ratio ζ.</summary>
    public double DampingRatio { get; }

    /// <summary>Share of the tool's motion; the shares of a machine sum to one, so that a slow move arrives where it was sent.</summary>
    public double Share { get; }

    internal double Hertz { get; }

    /// <summary>A mode.</summary>
    /// <param name="frequency">Natural frequency, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio, zero or more, less than 1.</param>
    /// <param name="share">Share of the tool's motion; negative where the mode moves the tool against the drive.</param>
    /// <returns>The mode.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static ModeShare Of(Frequency frequency, double dampingRatio, double share = 1) => new(
        Guard.Positive(frequency.Hertz, nameof(frequency)),
        dampingRatio is >= 0 and < 1 ? dampingRatio : throw Guard.Out(nameof(dampingRatio), dampingRatio, "at least 0 and less than 1"),
        Guard.Finite(share));

    /// <summary>A measured mode.</summary>
    /// <param name="mode">The mode.</param>
    /// <param name="share">Share of the tool's motion.</param>
    /// <returns>The mode, its uncertainty left out.</returns>
    public static ModeShare Of(Mode mode, double share = 1) => new(Guard.NotNull(mode).Hertz, mode.DampingRatio.SiValue, Guard.Finite(share));

    /// <summary>Invariant text.</summary>
    /// <returns>Frequency, damping ratio and share.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Hertz:G5} Hz, ζ = {DampingRatio * 100:0.##} %, share {Share:G3}");
}
