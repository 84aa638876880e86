using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Modes read from the spectrum of a machine shaken by something broad and level: natural frequency, damping ratio and size, with joint uncertainty.</summary>
/// <remarks>
/// <para>The spectrum is fitted as a sum of single modes, steady tones and a noise floor (a level and a part that rises as 1/f), each as the window shows it, by the debiased Whittle likelihood. Terms
/// enter one at a time while noise alone would hardly show the like. A line no wider than the window is a tone. A mode narrower than one line of the
/// spectrum is not told from a tone that wanders: it is refused as unresolved, and longer segments are asked for.</para>
/// <para>Valid where the excitation is level across each mode, the record is stationary, and the response has the shape stated in <see cref="ModalFitOptions.Shape"/>. A slope of the excitation across a mode shifts it, which no
/// uncertainty from the data covers; where the spectrum departs from the fitted shape, <see cref="ModeFindings.ShapeMisfit"/> says so and uncertainties are widened by the square root of the misfit.</para>
/// <para>Not to be confused with <see cref="RingDown"/>, which reads a free decay and is the better source for light damping.</para>
/// <para>Source: A. M. Sykulski, S. C. Olhede, A. P. Guillaumin, J. M. Lilly, J. J. Early, 2019, "The debiased Whittle likelihood", Biometrika 106(2), 251-266.</para>
/// </remarks>
/// <example><code>IReadOnlyList&lt;Mode&gt; modes = ModalFit.FromSpectrum(Welch.Estimate(record.X)).Modes;</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ModalFit
{
    private readonly ReadOnlyCollection<Mode> _modes;
    private readonly ReadOnlyCollection<Finding> _findings;
    private readonly double[] _fitted;

    internal ModalFit(IEnumerable<Mode> modes, IEnumerable<SteadyTone> tones, IEnumerable<RejectedPole> rejected, IEnumerable<Finding> findings, FrequencyBand band, double[] fitted)
    {
        _modes = Array.AsReadOnly([.. modes.OrderByDescending(mode => mode.Amplitude.SiValue)]);
        Tones = Array.AsReadOnly([.. tones.OrderBy(tone => tone.Frequency.SiValue)]);
        Rejected = Array.AsReadOnly([.. rejected.OrderBy(pole => pole.Frequency.Hertz)]);
        _findings = Array.AsReadOnly([.. findings.OrderByDescending(finding => finding.Severity)]);
        Band = band;
        _fitted = fitted;
    }

    /// <summary>The modes, the largest root mean square first; empty when a blocking finding says why.</summary>
    public IReadOnlyList<Mode> Modes => _modes;

    /// <summary>Steady tones, by frequency.</summary>
    public IReadOnlyList<SteadyTone> Tones { get; }

    /// <summary>What was fitted and not reported as a mode, with the reason, by frequency.</summary>
    public IReadOnlyList<RejectedPole> Rejected { get; }

    /// <summary>What was noticed, see <see cref="ModeFindings"/>; the weightiest first.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>From the first to the last line fitted.</summary>
    public FrequencyBand Band { get; }

    /// <summary>The fitted density at each line of <see cref="Band"/>, in the unit of the spectrum: noise floor, modes and tones as the window shows them.</summary>
    public ReadOnlySpan<double> FittedDensities => _fitted;

    /// <summary>The mode of largest root mean square.</summary>
    /// <exception cref="IndeterminateException">No mode was found.</exception>
    public Mode Dominant => _modes.Count > 0 ? _modes[0] : throw new IndeterminateException(_findings[0]);

    /// <summary>Reads the modes of a spectrum.</summary>
    /// <param name="spectrum">The spectrum, of acceleration, velocity or displacement; at least 16 lines in the band looked at.</param>
    /// <param name="options">What to look for; null for the defaults.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>The modes, or findings that say why there are none.</returns>
    /// <exception cref="ArgumentException">An option is out of its range, or the band holds too few lines.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ModalFit FromSpectrum(PowerSpectrum spectrum, ModalFitOptions? options = null, CancellationToken cancellation = default)
    {
        options ??= new ModalFitOptions();
        (int first, int last) = options.Lines(Guard.NotNull(spectrum));
        FrequencyBand band = new(first * spectrum.ResolutionHertz, last * spectrum.ResolutionHertz);
        if (!(spectrum.Densities[first..(last + 1)].ToArray().Max() > 0))
        {
            return new ModalFit([], [], [], [ModeReport.NoneInBand(band)], band, new double[last - first + 1]);
        }

        SpectrumLines lines = new(spectrum, options.Shape, first, last);
        return SpectralReport.Of(lines, SpectralSelection.Of(lines, options, cancellation), band, options.RelativeClockUncertainty);
    }

    /// <summary>The mode of largest root mean square, if there is one.</summary>
    /// <param name="mode">The mode, or null.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetDominant([NotNullWhen(true)] out Mode? mode)
    {
        mode = _modes.Count > 0 ? _modes[0] : null;
        return mode is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The modes, or the finding that stands in their place.</returns>
    public override string ToString() => _modes.Count > 0 ? string.Join("; ", _modes) : _findings[0].ToString();
}
