using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>How many more rounds of turning and probing bring the bed within a limit, or what keeps them from it.</summary>
/// <remarks>
/// A round counts as enough when the height spread that is expected to be read after it passes the guarded limit (JCGM 106:2012, clause 8, at a risk of 5 %): about an even chance, not a promise.
/// The forecast takes every diagnosed cause as cured.
/// </remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PassForecast
{
    private readonly int _rounds;

    internal PassForecast(int rounds, ForecastLimit limit, Measured<Length> floor, int? readings, bool assumesCure)
    {
        _rounds = rounds;
        Limit = limit;
        Floor = floor;
        ReadingsForEachPoint = readings;
        AssumesCure = assumesCure;
    }

    /// <summary>Whether further passes reach the limit.</summary>
    public bool Reaches => Limit == ForecastLimit.None;

    /// <summary>What keeps them from it.</summary>
    public ForecastLimit Limit { get; }

    /// <summary>Height spread expected to be read when everything is learned: the probe's noise and the hand's setting make it, and no number of passes lowers it.</summary>
    public Measured<Length> Floor { get; }

    /// <summary>Where <see cref="ForecastLimit.ProbeNoise"/> stands in the way, how many readings averaged at each point get there; null when none up to 1000 do, or none are needed.</summary>
    public int? ReadingsForEachPoint { get; }

    /// <summary>Whether a diagnosed cause must be cured first for the forecast to hold.</summary>
    public bool AssumesCure { get; }

    /// <summary>Rounds of turning and probing still needed: 0 when the bed is within the limit already.</summary>
    /// <exception cref="IndeterminateException">Further passes do not get there.</exception>
    public int Rounds => TryGetRounds(out int rounds)
        ? rounds
        : throw new IndeterminateException($"Further passes do not reach the limit: {ToString()}.");

    /// <summary>Rounds of turning and probing still needed, where they get there.</summary>
    /// <param name="rounds">The number, 0 or more.</param>
    /// <returns>Whether they get there.</returns>
    public bool TryGetRounds(out int rounds)
    {
        rounds = _rounds;
        return Reaches;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Rounds, or what limits.</returns>
    public override string ToString() => Limit switch
    {
        ForecastLimit.None => FormattableString.Invariant($"{_rounds} more"),
        ForecastLimit.ProbeNoise => $"the probe's noise makes {Floor} of any bed",
        ForecastLimit.TurnSetting => $"the setting of turns leaves {Floor}",
        _ => $"what a turn does is known too little, {Floor}",
    };
}
