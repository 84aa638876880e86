using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>What one turn of a screw does to the bed, learned from what was turned and what moved.</summary>
/// <remarks>Posterior mean and standard uncertainty; where nothing was learned they are those of the prior, see <see cref="TrammingSequenceOptions"/>.</remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ScrewResponse
{
    private readonly string[] _names;
    private readonly Measured<Length>[] _moves;

    internal ScrewResponse(AdjustingScrew screw, string[] names, Measured<Length>[] moves, double prior)
    {
        Screw = screw;
        _names = names;
        _moves = moves;
        Prior = Measured<Length>.FromSi(screw.Thread.Lead.SiValue, prior);
    }

    /// <summary>The screw, as stated.</summary>
    public AdjustingScrew Screw { get; }

    /// <summary>What was thought of its lead beforehand.</summary>
    public Measured<Length> Prior { get; }

    /// <summary>How far one turn moves the bed at the screw itself, positive in the stated sense; negative when it goes the other way.</summary>
    public Measured<Length> EffectiveLead => MoveAt(Screw.Name);

    /// <summary>How far one turn in the sense that raises the bed at the screw moves it at a screw, positive upwards.</summary>
    /// <param name="screw">Name of a screw; the cross-coupling when it is another one.</param>
    /// <returns>The move for one turn.</returns>
    /// <exception cref="ArgumentException">No screw of that name.</exception>
    public Measured<Length> MoveAt(string screw)
    {
        int index = Array.IndexOf(_names, Guard.NotNull(screw));
        return index >= 0 ? _moves[index] : throw Guard.Refused(nameof(screw), $"There is no screw called '{screw}'.");
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Name and effective lead.</returns>
    public override string ToString() => $"{Screw.Name}: {EffectiveLead} per turn";
}
