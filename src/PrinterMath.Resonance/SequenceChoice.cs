using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>The sequence picked, why, and everything it was picked from.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class SequenceChoice
{
    private readonly SequenceCandidate? _pick;
    private readonly ReadOnlyCollection<SequenceCandidate> _candidates;
    private readonly ReadOnlyCollection<Finding> _findings;

    internal SequenceChoice(SequenceCandidate? pick, string reason, IEnumerable<SequenceCandidate> candidates, params Finding[] findings)
    {
        _pick = pick;
        Reason = reason;
        _candidates = Array.AsReadOnly([.. candidates]);
        _findings = Array.AsReadOnly(findings);
    }

    /// <summary>The candidate picked.</summary>
    /// <exception cref="IndeterminateException">No candidate keeps the duration limit.</exception>
    public SequenceCandidate Pick => _pick ?? throw new IndeterminateException(_findings[0]);

    /// <summary>Why, in one sentence with the numbers.</summary>
    public string Reason { get; }

    /// <summary>All candidates, those beyond the limits too, in order of duration.</summary>
    public IReadOnlyList<SequenceCandidate> Candidates => _candidates;

    /// <summary>What was noticed, see <see cref="SequenceFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>The candidate picked, if one keeps the limits.</summary>
    /// <param name="pick">The candidate, or null.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetPick([NotNullWhen(true)] out SequenceCandidate? pick)
    {
        pick = _pick;
        return pick is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The reason.</returns>
    public override string ToString() => Reason;
}
