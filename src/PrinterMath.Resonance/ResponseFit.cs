using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using System.Numerics;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Modes read from a frequency response: natural frequency, damping ratio and size, with joint uncertainty, close modes together.</summary>
/// <remarks>
/// <para>Fitted is H(ω) = Σ (r/(jω − p) + r*/(jω − p*)) + a·ω^(m−2) + b·ω^m, p = ω_n·(−ζ + j√(1 − ζ²)), by least squares in all poles, complex residues r and complex remainders a, b at once; m is 0 for
/// <see cref="Receptance"/> and <see cref="Transmissibility"/>, 1 for <see cref="Mobility"/>, 2 for <see cref="Accelerance"/>. Complex residues leave room for damping that is not proportional, and for a short delay.</para>
/// <para>Lines are weighted by their random errors where the coherence is known, which also gives the uncertainties; without it all weigh alike and the residuals do. A response estimated from
/// signals is fitted as its window shows it, which is right for an excitation level over a few lines and random or the same in no two segments. Where leakage rather than noise limits the coherence, at modes
/// a few lines wide in little noise, the intervals are wide: simulated, that of the frequency up to 1.5 times, that of the damping ratio 1.1 times.</para>
/// <para>Poles enter one at a time while noise alone would hardly show the like. A pole is a mode when it also stays where it is, within three standard uncertainties and 2 % of the frequency, 30 % of the
/// damping, in the fit with one pole more; the others are listed with the reason. A mode's amplitude is |r|/(ζω_n), the height of its own peak in the response's unit; of a transmissibility 2ζ of it is the mode's share.</para>
/// Source: D. J. Ewins, Modal Testing, 2nd ed. 2000, chapter 4 (from memory); the rational form of M. H. Richardson and D. L. Formenti, "Parameter estimation from frequency response measurements using rational
/// fraction polynomials", IMAC 1982 (from memory), by poles instead of polynomials, which keeps it well conditioned.
/// </remarks>
/// <example><code>
/// ResponseFit fit = ResponseFit.Fit(Transmissibility.Estimate(commanded, measured));
/// foreach (Mode mode in fit.Modes) { Console.WriteLine(mode); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ResponseFit
{
    private readonly ReadOnlyCollection<Mode> _modes;
    private readonly Complex[] _residues;
    private readonly Complex[] _fitted;

    internal ResponseFit(
        IReadOnlyList<(Mode Mode, Complex Residue)> modes, IEnumerable<RejectedPole> rejected, IEnumerable<Finding> findings, FrequencyBand band, Complex[] fitted, double explained)
    {
        (Mode Mode, Complex Residue)[] ordered = [.. modes.OrderByDescending(pair => pair.Mode.Amplitude.SiValue)];
        _modes = Array.AsReadOnly([.. ordered.Select(pair => pair.Mode)]);
        _residues = [.. ordered.Select(pair => pair.Residue)];
        Rejected = Array.AsReadOnly([.. rejected.OrderBy(pole => pole.Frequency.Hertz)]);
        Findings = Array.AsReadOnly([.. findings.OrderByDescending(finding => finding.Severity)]);
        Band = band;
        _fitted = fitted;
        ExplainedShare = explained;
    }

    /// <summary>The modes, the largest amplitude first; empty when a blocking finding says why.</summary>
    public IReadOnlyList<Mode> Modes => _modes;

    /// <summary>Residue r of each of <see cref="Modes"/>, in the response's unit times rad/s; −j·(modal constant)/(2ω_d) for proportional damping.</summary>
    public ReadOnlySpan<Complex> Residues => _residues;

    /// <summary>What was fitted and not reported as a mode, with the reason, by frequency.</summary>
    public IReadOnlyList<RejectedPole> Rejected { get; }

    /// <summary>What was noticed, see <see cref="ModeFindings"/>; the weightiest first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>From the first to the last line fitted.</summary>
    public FrequencyBand Band { get; }

    /// <summary>The fitted response at each line of <see cref="Band"/>, all poles and remainders, in the response's unit.</summary>
    public ReadOnlySpan<Complex> FittedValues => _fitted;

    /// <summary>Share of the weighted squares of the response that the fit accounts for, from 0 to 1.</summary>
    public double ExplainedShare { get; }

    /// <summary>The mode of largest amplitude.</summary>
    /// <exception cref="IndeterminateException">No mode was found.</exception>
    public Mode Dominant => _modes.Count > 0 ? _modes[0] : throw new IndeterminateException(Findings[0]);

    /// <summary>The modes of a machine shaken by its own motors.</summary>
    /// <param name="response">Motion over commanded motion; at least 12 lines in the band looked at.</param>
    /// <param name="options">What to look for; null for the defaults.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>The modes, or findings that say why there are none.</returns>
    /// <exception cref="ArgumentException">An option is out of its range, or the band holds too few lines.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ResponseFit Fit(Transmissibility response, ResponseFitOptions? options = null, CancellationToken cancellation = default) =>
        ResponseReport.Of(Guard.NotNull(response).Response.Lines, 0, options, cancellation);

    /// <summary>The modes of displacement over force.</summary>
    /// <inheritdoc cref="Fit(Transmissibility, ResponseFitOptions?, CancellationToken)"/>
    public static ResponseFit Fit(Receptance response, ResponseFitOptions? options = null, CancellationToken cancellation = default) =>
        ResponseReport.Of(Guard.NotNull(response).Response.Lines, 0, options, cancellation);

    /// <summary>The modes of velocity over force.</summary>
    /// <inheritdoc cref="Fit(Transmissibility, ResponseFitOptions?, CancellationToken)"/>
    public static ResponseFit Fit(Mobility response, ResponseFitOptions? options = null, CancellationToken cancellation = default) =>
        ResponseReport.Of(Guard.NotNull(response).Response.Lines, 1, options, cancellation);

    /// <summary>The modes of acceleration over force.</summary>
    /// <inheritdoc cref="Fit(Transmissibility, ResponseFitOptions?, CancellationToken)"/>
    public static ResponseFit Fit(Accelerance response, ResponseFitOptions? options = null, CancellationToken cancellation = default) =>
        ResponseReport.Of(Guard.NotNull(response).Response.Lines, 2, options, cancellation);

    /// <summary>The mode of largest amplitude, if there is one.</summary>
    /// <param name="mode">The mode, or null.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetDominant([NotNullWhen(true)] out Mode? mode)
    {
        mode = _modes.Count > 0 ? _modes[0] : null;
        return mode is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The modes, or the finding that stands in their place.</returns>
    public override string ToString() => _modes.Count > 0 ? string.Join("; ", _modes) : Findings[0].ToString();
}
