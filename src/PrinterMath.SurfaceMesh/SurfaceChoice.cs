using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Which of several height models keeps closest to heights that none was made from: the simplest that is as good as the best, and why.</summary>
/// <remarks>
/// <para>Candidates are compared at check points, best at the centres of the cells of a grid, where interpolation errs most. Leaving out a node instead would test twice the spacing: for a bilinear model that reads some four
/// times the true error.</para>
/// <para>Deviations are squared and compared pair by pair; a candidate is as good as the best when the mean of its surplus is within one standard error of that mean. Of those the first in the order given, the simplest, is
/// chosen; the choice is undecided when there are others. Source: L. Breiman, J. H. Friedman, R. A. Olshen, C. J. Stone 1984, Classification and Regression Trees, section 3.4.3, for the rule of one standard error (from memory).</para>
/// </remarks>
/// <example><code>
/// SurfaceChoice choice = SurfaceChoice.Among(
///     [SurfaceCandidate.Of("bilinear", BilinearModel.Through(grid)), SurfaceCandidate.Of("bicubic", BicubicModel.Through(grid))], checkPoints);
/// Console.WriteLine(choice.Reason);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class SurfaceChoice
{
    private const int FewestChecks = 5;

    private SurfaceChoice(SurfaceScore[] scores, SurfaceScore chosen, int checks)
    {
        Scores = Array.AsReadOnly(scores);
        Score = chosen;
        CheckCount = checks;
    }

    /// <summary>All candidates in the order given.</summary>
    public IReadOnlyList<SurfaceScore> Scores { get; }

    /// <summary>The candidate chosen.</summary>
    public SurfaceCandidate Chosen => Score.Candidate;

    /// <summary>Its score.</summary>
    public SurfaceScore Score { get; }

    /// <summary>Number of check points.</summary>
    public int CheckCount { get; }

    /// <summary>Whether no other candidate is as good.</summary>
    public bool IsDecided => Scores.Count(score => score.IsAsGood) == 1;

    /// <summary>Why, in a sentence with numbers.</summary>
    public string Reason
    {
        get
        {
            SurfaceScore best = Scores.MinBy(score => score.MeanSquareMeters)!;
            string others = string.Join(", ", Scores.Where(score => score.IsAsGood && score != Score).Select(score => score.Candidate.Name));
            string at = string.Create(CultureInfo.InvariantCulture, $"At {CheckCount} check points '{Chosen.Name}' is off by {Score.RootMeanSquare.Micrometers:0.0} µm");
            return IsDecided
                ? at + (Scores.Count == 1 ? "; there is no other." : string.Create(CultureInfo.InvariantCulture, $", less than any other: the next by {Scores.Where(s => s != Score).Min(s => s.RootMeanSquare.Micrometers):0.0} µm, more than one standard error beyond."))
                : at + string.Create(CultureInfo.InvariantCulture, $", within one standard error of the best ('{best.Candidate.Name}', {best.RootMeanSquare.Micrometers:0.0} µm): undecided between it and {others}, the simplest is taken. More check points would tell.");
        }
    }

    /// <summary>Chooses.</summary>
    /// <param name="candidates">Candidates, the simplest first, of different names; at least one.</param>
    /// <param name="checkPoints">Heights at places that no candidate was made from, five or more, within the domain of each.</param>
    /// <returns>The choice.</returns>
    /// <exception cref="ArgumentException">There are no candidates or too few check points, or a name comes twice.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A check point lies outside the domain of a candidate that refuses it.</exception>
    public static SurfaceChoice Among(IReadOnlyList<SurfaceCandidate> candidates, IReadOnlyList<ProbePoint> checkPoints)
    {
        SurfaceCandidate[] copy = [.. Guard.NotNull(candidates)];
        ProbePoint[] checks = [.. Guard.NotNull(checkPoints)];
        Guard.AtLeast(copy.Length, 1, nameof(candidates));
        if (checks.Length < FewestChecks)
        {
            throw Guard.Refused(nameof(checkPoints), FormattableString.Invariant($"{checks.Length} check points tell nothing apart; at least {FewestChecks}."));
        }

        if (copy.Select(candidate => candidate.Name).Distinct(StringComparer.Ordinal).Count() < copy.Length)
        {
            throw Guard.Refused(nameof(candidates), "A name comes twice.");
        }

        double[][] squares = [.. copy.Select(candidate => checks.Select(check => Math.Pow(candidate.Model.EstimateAt(check.X, check.Y).Meters - check.ZMeters, 2)).ToArray())];
        double[] best = squares.MinBy(own => own.Average())!;
        SurfaceScore[] scores = [.. copy.Select((candidate, i) => Against(candidate, squares[i], best))];
        return new SurfaceChoice(scores, scores.First(score => score.IsAsGood), checks.Length);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The choice and its reason.</returns>
    public override string ToString() => $"{Chosen.Name}{(IsDecided ? string.Empty : " (undecided)")}; {Reason}";

    private static SurfaceScore Against(SurfaceCandidate candidate, double[] own, double[] best)
    {
        double[] differences = [.. own.Zip(best, (a, b) => a - b)];
        double mean = differences.Average(), variance = differences.Sum(d => (d - mean) * (d - mean)) / (differences.Length - 1);
        return new SurfaceScore(candidate, own.Average(), mean, Math.Sqrt(variance / differences.Length));
    }
}
