using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>One cause that explains what turns, setting errors and probe noise do not: what, where, how large, how sure, and what to do.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class SequenceDiagnosis
{
    private readonly SequenceCause[] _rivals;

    internal SequenceDiagnosis(SequenceCause cause, string subject, int pass, Measured<Length> effect, double probability, SequenceCause[] rivals, Finding finding)
    {
        Cause = cause;
        Subject = subject;
        Pass = pass < 0 ? null : pass;
        Effect = effect;
        Probability = probability;
        _rivals = rivals;
        Finding = finding;
    }

    /// <summary>The cause that explains the readings best.</summary>
    public SequenceCause Cause { get; }

    /// <summary>What it is about: the name of a screw, a place, or the whole bed.</summary>
    public string Subject { get; }

    /// <summary>Index of the pass, from 0, before which something moved; null where the cause has no such moment.</summary>
    public int? Pass { get; }

    /// <summary>
    /// How large: the error of the lead for each turn, the lost motion, the largest change of the bed's twist or bow, the move (positive upwards), or the drift over the whole sequence
    /// (positive upwards).
    /// </summary>
    public Measured<Length> Effect { get; }

    /// <summary>Smallest p-value of all causes, each multiplied by the number of places it was looked for at and of causes: the chance, at most, that a machine without fault shows any cause as strong.</summary>
    public double Probability { get; }

    /// <summary>Causes that explain the same readings as well; empty when the cause is decided.</summary>
    public IReadOnlyList<SequenceCause> Rivals => Array.AsReadOnly(_rivals);

    /// <summary>Whether no other cause explains the same readings.</summary>
    public bool IsDecided => _rivals.Length == 0;

    /// <summary>Code, numbers and what to do, in a sentence.</summary>
    public Finding Finding { get; }

    /// <summary>Stable code, <c>sequence.</c> and the cause.</summary>
    public string Code => Finding.Code;

    /// <summary>Invariant text.</summary>
    /// <returns>Code and sentence.</returns>
    public override string ToString() => Finding.ToString();
}
