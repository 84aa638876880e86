using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>Chooses an impulse sequence for modes whose frequency and damping are uncertain.</summary>
/// <remarks>
/// Every family is tried at design frequencies from a quarter below the lowest to a quarter above the highest corner of the modes' boxes, at the dominant mode's damping; with two
/// modes or more also the convolution of one sequence for each mode. Each is judged by the largest residual over all boxes f ± k·u, ζ ± k·u. The boxes treat frequency and damping as
/// free of each other, which is on the safe side. Acceleration is a separate step, see <see cref="AllowedAcceleration"/>.
/// Source: residual ratio as in <see cref="ImpulseSequence.ResidualVibration"/>; the worst case over a box is a choice of this library.
/// </remarks>
/// <example><code>
/// SequenceChoice choice = SequenceSearch.For(found.Modes, new SequenceLimits { AcceptableResidual = 0.05 });
/// Console.WriteLine(choice.Reason);
/// </code></example>
public static class SequenceSearch
{
    private const double Margin = 0.25;
    private const double LargestDamping = 0.95;
    private const double LargestDesignDamping = 0.3;

    /// <summary>The choice.</summary>
    /// <param name="modes">The modes, at least one; the first is taken as the dominant one.</param>
    /// <param name="limits">Duration, residual and coverage; null for the defaults.</param>
    /// <returns>The pick with its reason, and all candidates.</returns>
    /// <exception cref="ArgumentException">There are no modes.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A limit is out of range, or a mode's frequency is not known well enough to be positive.</exception>
    public static SequenceChoice For(IReadOnlyList<Mode> modes, SequenceLimits? limits = null)
    {
        if (Guard.NotNull(modes).Count == 0)
        {
            throw Guard.Refused(nameof(modes), "There are no modes; give at least one.");
        }

        limits ??= new SequenceLimits();
        double k = Guard.NonNegative(limits.CoverageFactor, nameof(limits));
        int count = Guard.AtLeast(limits.Frequencies, 2, nameof(limits));
        double? acceptable = limits.AcceptableResidual is { } residual ? Guard.StrictlyBetween(residual, 0, 1, nameof(limits)) : null;
        double longest = limits.LongestDuration is { } duration ? Guard.Positive(duration.Seconds, nameof(limits)) : double.PositiveInfinity;
        double tolerance = limits.Tolerance is { } given
            ? Guard.Between(given, 0.005, 0.3, nameof(limits))
            : Math.Clamp(0.95 * acceptable ?? 0.05, 0.005, 0.3);
        Box[] boxes = [.. modes.Select(mode => Box.Of(mode, k))];

        SequenceCandidate[] candidates = [.. Try(modes, boxes, tolerance, count).OrderBy(candidate => candidate.Sequence.DurationSeconds)];
        SequenceCandidate[] allowed = [.. candidates.Where(candidate => candidate.Sequence.DurationSeconds <= longest)];
        return allowed.Length == 0 ? NoneShortEnough(candidates, longest) : Choose(candidates, allowed, acceptable, k, longest);
    }

    private static IEnumerable<SequenceCandidate> Try(IReadOnlyList<Mode> modes, Box[] boxes, double tolerance, int count)
    {
        double low = boxes.Min(box => box.Band.LowerHertz) * (1 - Margin);
        double high = boxes.Max(box => box.Band.UpperHertz) * (1 + Margin);
        double damping = Design(modes[0]);
        foreach (SequenceFamily family in Enum.GetValues<SequenceFamily>())
        {
            double[] designs = [.. Enumerable.Range(0, count).Select(i => low * Math.Pow(high / low, i / (count - 1.0))), .. modes.Select(mode => mode.Hertz)];
            ImpulseSequence unit = Make(family, 1, damping, tolerance);
            foreach (double hertz in designs)
            {
                ImpulseSequence sequence = unit.AtFrequency(hertz);
                yield return new SequenceCandidate(family, hertz, false, sequence, Worst(sequence, boxes));
            }

            if (modes.Count > 1)
            {
                ImpulseSequence sequence = modes.Select(mode => Make(family, mode.Hertz, Design(mode), tolerance)).Aggregate((a, b) => a.Convolve(b));
                yield return new SequenceCandidate(family, modes[0].Hertz, true, sequence, Worst(sequence, boxes));
            }
        }
    }

    private static SequenceChoice Choose(SequenceCandidate[] all, SequenceCandidate[] allowed, double? acceptable, double k, double longest)
    {
        SequenceCandidate[] good = [.. allowed.Where(candidate => candidate.WorstResidual <= acceptable)];
        SequenceCandidate least = allowed.MinBy(candidate => candidate.WorstResidual)!;
        SequenceCandidate pick = good.Length > 0 ? good.MinBy(candidate => candidate.VarianceSquareSeconds)! : least;
        string within = double.IsInfinity(longest) ? string.Empty : string.Create(CultureInfo.InvariantCulture, $" and are no longer than {longest * 1e3:0.0} ms");
        string box = string.Create(CultureInfo.InvariantCulture, $"over the modes' ranges of ± {k:0.##} standard uncertainties");
        if (acceptable is not { } limit)
        {
            return new SequenceChoice(pick, string.Create(CultureInfo.InvariantCulture, $"{pick}; the least {box} of {allowed.Length} sequences tried{within.Replace(" and are", " that are", StringComparison.Ordinal)}."), all);
        }

        if (good.Length > 0)
        {
            return new SequenceChoice(pick, string.Create(CultureInfo.InvariantCulture, $"{pick}; it rounds the path least of the {good.Length} sequences that stay at or below {limit * 100:0.0} % {box}{within}."), all);
        }

        return new SequenceChoice(
            pick,
            string.Create(CultureInfo.InvariantCulture, $"{pick}; none of {allowed.Length} sequences stays at or below {limit * 100:0.0} % {box}, this one comes nearest."),
            all,
            new Finding(
                SequenceFindings.ResidualNotMet,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"The least residual is {least.WorstResidual * 100:0.0} % where {limit * 100:0.0} % was asked for: allow a longer sequence, or know the modes better."),
                new FindingNumber("residual", least.WorstResidual, "1"),
                new FindingNumber("acceptable", limit, "1")));
    }

    private static SequenceChoice NoneShortEnough(SequenceCandidate[] candidates, double longest)
    {
        var finding = new Finding(
            SequenceFindings.AllTooLong,
            FindingSeverity.Blocking,
            string.Create(CultureInfo.InvariantCulture, $"The shortest sequence takes {candidates[0].Duration.Milliseconds:0.0} ms; {longest * 1e3:0.0} ms are allowed."),
            new FindingNumber("shortest", candidates[0].Sequence.DurationSeconds, "s"),
            new FindingNumber("limit", longest, "s"));
        return new SequenceChoice(null, finding.Message, candidates, finding);
    }

    private static double Design(Mode mode) => Math.Clamp(mode.DampingRatio.SiValue, 0, LargestDesignDamping);

    private static double Worst(ImpulseSequence sequence, Box[] boxes) => boxes.Max(box => sequence.WorstResidual(box.Band, box.LowestDamping, box.HighestDamping));

    private static ImpulseSequence Make(SequenceFamily family, double hertz, double damping, double tolerance)
    {
        Frequency frequency = Frequency.FromHertz(hertz);
        return family switch
        {
            SequenceFamily.ZV => ImpulseSequence.ZeroVibration(frequency, damping),
            SequenceFamily.ZVD => ImpulseSequence.ZeroVibrationDerivative(frequency, damping),
            SequenceFamily.ZVDD => ImpulseSequence.ZeroVibrationDerivative(frequency, damping, 2),
            _ => ImpulseSequence.ExtraInsensitive(frequency, damping, tolerance),
        };
    }

    /// <summary>Where a mode may lie: f ± k·u and ζ ± k·u.</summary>
    private readonly record struct Box(FrequencyBand Band, double LowestDamping, double HighestDamping)
    {
        internal static Box Of(Mode mode, double k)
        {
            double width = k * mode.Frequency.SiStandardUncertainty;
            double spread = k * mode.DampingRatio.SiStandardUncertainty;
            double low = Guard.Positive(mode.Hertz - width, "modes");
            return new Box(
                new FrequencyBand(low, mode.Hertz + width),
                Math.Clamp(mode.DampingRatio.SiValue - spread, 0, LargestDamping),
                Math.Clamp(mode.DampingRatio.SiValue + spread, 0, LargestDamping));
        }
    }
}
