using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>The modes found in a decay or a spectrum, the largest first, and what was noticed.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ModeSet
{
    private readonly ReadOnlyCollection<Mode> _modes;
    private readonly ReadOnlyCollection<Finding> _findings;

    internal ModeSet(IEnumerable<Mode> modes, IEnumerable<Finding> findings, double explained)
    {
        _modes = Array.AsReadOnly([.. modes.OrderByDescending(mode => mode.Amplitude.SiValue)]);
        _findings = Array.AsReadOnly([.. findings.OrderByDescending(finding => finding.Severity)]);
        ExplainedShare = explained;
    }

    /// <summary>The modes, the largest amplitude first; empty when a blocking finding says why.</summary>
    public IReadOnlyList<Mode> Modes => _modes;

    /// <summary>What was noticed, see <see cref="ModeFindings"/>; the weightiest first.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Share of the signal's power that the modes and steady tones account for, from 0 to 1.</summary>
    public double ExplainedShare { get; }

    /// <summary>The mode of largest amplitude.</summary>
    /// <exception cref="IndeterminateException">No mode was found.</exception>
    public Mode Dominant => _modes.Count > 0 ? _modes[0] : throw new IndeterminateException(_findings[0]);

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
    public override string ToString() => _modes.Count > 0 ? string.Join("; ", _modes) : _findings[0].ToString();
}
