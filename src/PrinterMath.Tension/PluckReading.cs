using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>What <see cref="Pluck.Read"/> heard: the fundamental of the span with its uncertainty, the partials behind it, and the findings.</summary>
/// <remarks>
/// <para>The fundamental is the first partial of the stiff-string law f_n = n·f0·√(1 + B·n²), that is f0·√(1 + B), fitted to all partials, so
/// that a fundamental too weak to be heard is found and a first partial pulled aside by what the span is fixed to is not taken at its word.</para>
/// <para>Its standard uncertainty combines the scatter of the partials about the law, the movement of the frequency within the window and, of several
/// plucks, the scatter between them. It says nothing about a span other than the one that sounded: damp the neighbouring belt by hand.</para>
/// <para>Limit: its uncertainty is on the wide side; on simulated plucks without glide its 95 % intervals hold more than 99 % of the time and it is three to ten times the root
/// mean square error, since a glide or a stray may hide in the noise; the error itself is 1.2 times what noise alone leaves at best. Of 10 000 simulated plucks 2.5 % were refused (8 % where the even partials dominate) and none was read an octave off; narrow
/// <see cref="PluckOptions.LowestFundamental"/> and <see cref="PluckOptions.HighestFundamental"/> to what the span allows. Recordings of strings only, not of belts, were at hand.</para>
/// <para>Source: Fletcher 1964, Normal vibration frequencies of a stiff piano string, J. Acoust. Soc. Am. 36, 203-209, for the law.</para>
/// </remarks>
/// <example><code>
/// PluckReading reading = Pluck.Read(signal);
/// if (reading.TryGetFundamental(out Measured&lt;Frequency&gt; heard)) { Console.WriteLine(heard); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PluckReading
{
    private readonly PluckAnalysis? _strongest;
    private readonly Measured<Frequency> _fundamental;
    private readonly Measured<Frequency>? _limit;
    private readonly Finding? _blocking;
    private readonly IReadOnlyList<Partial> _partials;

    internal PluckReading(
        IReadOnlyList<Finding> findings, IReadOnlyList<HeardPluck> plucks, PluckAnalysis? strongest, PluckConsensus? consensus, bool decayIsFalse = false)
    {
        Findings = findings;
        Plucks = plucks;
        _strongest = strongest;
        _fundamental = consensus?.Fundamental ?? default;
        _limit = consensus?.SmallAmplitudeLimit;
        _blocking = findings.FirstOrDefault(f => f.Severity == FindingSeverity.Blocking);
        _partials = _blocking is not null || strongest is null ? []
            : decayIsFalse ? [.. strongest.Partials.Select(p => p.WithoutDecay())] : strongest.Partials;
    }

    /// <summary>What was noticed; codes in <see cref="PluckFindings"/>. A blocking finding means that there is no fundamental.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Every pluck that was listened to, in order of time.</summary>
    public IReadOnlyList<HeardPluck> Plucks { get; }

    /// <summary>The fundamental in the stated window: first partial f0·√(1 + B) in Hz, with standard uncertainty and degrees of freedom.</summary>
    /// <exception cref="IndeterminateException">There is a blocking finding.</exception>
    public Measured<Frequency> Fundamental => _blocking is null ? _fundamental : throw new IndeterminateException(_blocking);

    /// <summary>f0 of the stiff-string law for the strongest pluck used, the fundamental of a limp string under the same tension.</summary>
    /// <exception cref="IndeterminateException">There is a blocking finding.</exception>
    public Measured<Frequency> StringFundamental =>
        Measured<Frequency>.FromSi(
            Fit.Model.F0,
            Math.Sqrt((Fit.F0Uncertainty * Fit.F0Uncertainty) + (_strongest!.SystematicUncertainty * _strongest.SystematicUncertainty)),
            Fit.DegreesOfFreedom);

    /// <summary>Inharmonicity B of the stiff-string law for the strongest pluck used, a ratio, 0 or more.</summary>
    /// <remarks>For pinned ends B = π²·EI/(T·L²). The estimate leans on a prior of 0 ± 0.001, which decides when few partials are heard.</remarks>
    /// <exception cref="IndeterminateException">There is a blocking finding.</exception>
    public Measured<double> Inharmonicity => Measured<double>.FromSi(Fit.Model.B, Fit.InharmonicityUncertainty, Fit.DegreesOfFreedom);

    /// <summary>Partials of the strongest pluck used, by number; empty when there is a blocking finding.</summary>
    public IReadOnlyList<Partial> Partials => _partials;

    /// <summary>The strongest pluck used: where it was listened to.</summary>
    /// <exception cref="IndeterminateException">There is a blocking finding.</exception>
    public HeardPluck Window => _blocking is null ? new HeardPluck(_strongest!, true) : throw new IndeterminateException(_blocking);

    /// <summary>Power of the partials over all other power in the band, for the strongest pluck used.</summary>
    /// <exception cref="IndeterminateException">There is a blocking finding.</exception>
    public Level SignalToNoise => _blocking is null ? Level.FromDecibels(_strongest!.SignalToNoise) : throw new IndeterminateException(_blocking);

    private StiffStringFit Fit => _blocking is null ? _strongest!.Fit! : throw new IndeterminateException(_blocking);

    /// <summary>The fundamental, if the recording holds one.</summary>
    /// <param name="fundamental">See <see cref="Fundamental"/>; the default when false is returned.</param>
    /// <returns>Whether there is no blocking finding.</returns>
    public bool TryGetFundamental(out Measured<Frequency> fundamental)
    {
        fundamental = _blocking is null ? _fundamental : default;
        return _blocking is null;
    }

    /// <summary>The small-amplitude limit f0 of f(A) = f0·(1 + β·A²) for the first partial, in Hz: the pitch into which a pluck dies.</summary>
    /// <param name="limit">Its value and standard uncertainty, when true is returned.</param>
    /// <returns>Whether there is no blocking finding and every pluck used was long enough to be followed in four blocks.</returns>
    /// <remarks>
    /// Intercept of a weighted line of the momentary frequency of all followed partials over their power. <see cref="Fundamental"/> is the frequency of
    /// the heard <see cref="Window"/>, loud part included, and rises with the force of the pluck. To compare two belts use the limit of both where either carries
    /// <see cref="PluckFindings.Glide"/>, else the fundamental, which is then the more certain; never one of each.
    /// </remarks>
    public bool TryGetSmallAmplitudeLimit(out Measured<Frequency> limit)
    {
        limit = _limit ?? default;
        return _blocking is null && _limit is not null;
    }

    /// <summary>The fundamental, what it rests on and the codes of the cautions, or what stands in its way; invariant.</summary>
    /// <returns>The text, for example <c>110.00(4) Hz from 12 partials of 3 plucks (pluck.beats)</c>.</returns>
    public override string ToString()
    {
        if (_blocking is not null)
        {
            return _blocking.ToString();
        }

        int used = Plucks.Count(p => p.IsUsed);
        string plucks = used == 1 ? "one pluck" : string.Create(CultureInfo.InvariantCulture, $"{used} plucks");
        string cautions = string.Join(", ", Findings.Where(f => f.Severity == FindingSeverity.Caution).Select(f => f.Code).Distinct());
        string partials = Partials.Count == 1 ? "one partial" : string.Create(CultureInfo.InvariantCulture, $"{Partials.Count} partials");
        return $"{_fundamental} from {partials} of {plucks}{(cautions.Length > 0 ? $" ({cautions})" : string.Empty)}";
    }
}
