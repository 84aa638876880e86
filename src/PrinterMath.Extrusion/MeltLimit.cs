using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>The largest flow of a <see cref="HotEnd"/> with a plastic at a temperature, and which limit binds.</summary>
/// <remarks>This is what the constants promise, and constants of plastics are worth little better than a factor: a test with stepped flow tells what the machine does.</remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MeltLimit
{
    private readonly ReadOnlyCollection<FlowLimit> _limits;
    private readonly ReadOnlyCollection<Finding> _findings;

    internal MeltLimit(IEnumerable<FlowLimit> limits, IEnumerable<Finding> findings)
    {
        _limits = limits.OrderBy(limit => limit.Flow.SiValue).ToList().AsReadOnly();
        _findings = findings.ToList().AsReadOnly();
    }

    /// <summary>All limits that could be computed, the tightest first; none when the block is too cold.</summary>
    public IReadOnlyList<FlowLimit> Limits => _limits;

    /// <summary>What was noticed, see <see cref="MeltFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>The limit that binds.</summary>
    /// <exception cref="IndeterminateException">The block is too cold for the plastic.</exception>
    public FlowLimit Binding => _limits.Count > 0 ? _limits[0] : throw new IndeterminateException(_findings.First(finding => finding.Severity == FindingSeverity.Blocking));

    /// <summary>The largest flow: that of the limit that binds.</summary>
    /// <exception cref="IndeterminateException">The block is too cold for the plastic.</exception>
    public Measured<VolumeFlow> Flow => Binding.Flow;

    /// <summary>The largest flow, if there is one.</summary>
    /// <param name="flow">The flow, or the default.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetFlow(out Measured<VolumeFlow> flow)
    {
        flow = _limits.Count > 0 ? _limits[0].Flow : default;
        return _limits.Count > 0;
    }

    /// <summary>Judges whether a wanted flow is possible: the verdict of that limit which conforms least.</summary>
    /// <param name="wanted">The flow, greater than zero.</param>
    /// <returns>The verdict at a risk of 5 % for that limit; where several are close, the risk that one of them fails is at most the sum.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is not positive.</exception>
    /// <exception cref="IndeterminateException">The block is too cold for the plastic.</exception>
    public Verdict<VolumeFlow> Judge(VolumeFlow wanted)
    {
        Guard.Positive(wanted.CubicMetersPerSecond, nameof(wanted));
        _ = Binding;
        Tolerance<VolumeFlow> tolerance = Tolerance.AtLeast(wanted);
        return _limits.Select(limit => tolerance.Judge(limit.Budget)).MinBy(verdict => verdict.ProbabilityOfConformity)!;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Flow and binding limit, or the finding in their place.</returns>
    public override string ToString() => _limits.Count > 0 ? $"at most {Flow}, limited by {Binding.Kind}" : _findings[0].ToString();
}
