using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>One of the plucks of a recording: where it was listened to, what it said and whether it took part in the reading.</summary>
/// <example><code>foreach (HeardPluck pluck in reading.Plucks) { Console.WriteLine(pluck); }</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class HeardPluck
{
    private readonly PluckAnalysis _analysis;

    internal HeardPluck(PluckAnalysis analysis, bool used)
    {
        _analysis = analysis;
        IsUsed = used;
    }

    /// <summary>Where the window begins, from the start of the recording.</summary>
    public Duration Start => Duration.FromSeconds(_analysis.Stretch.Start / _analysis.SampleRate);

    /// <summary>How long the window is.</summary>
    public Duration Duration => Duration.FromSeconds(_analysis.Stretch.Count / _analysis.SampleRate);

    /// <summary>Whether the pluck took part in the reading.</summary>
    public bool IsUsed { get; }

    /// <summary>What keeps this pluck from an answer; null when it has one.</summary>
    public Finding? Blocked => _analysis.Blocked;

    /// <summary>This pluck's own fundamental.</summary>
    /// <param name="fundamental">First partial f0·√(1 + B) with the standard uncertainty of this pluck, when true is returned.</param>
    /// <returns>Whether this pluck has an answer.</returns>
    public bool TryGetFundamental(out Measured<Frequency> fundamental)
    {
        bool heard = _analysis.Blocked is null;
        fundamental = heard
            ? Measured<Frequency>.FromSi(_analysis.FirstPartial, _analysis.Uncertainty, _analysis.DegreesOfFreedom)
            : default;
        return heard;
    }

    /// <summary>Start, length and fundamental, invariant.</summary>
    /// <returns>The text.</returns>
    public override string ToString()
    {
        string answer = TryGetFundamental(out Measured<Frequency> f) ? f.ToString() + (IsUsed ? string.Empty : ", set aside") : Blocked!.Code;
        return string.Create(CultureInfo.InvariantCulture, $"at {Start.Seconds:F2} s for {Duration.Seconds:F2} s: {answer}");
    }
}
