using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Whether a belt keeps its length over the travel, as it must: a change of length ΔL is a change of tension EA·ΔL/L.</summary>
/// <remarks>It fails where a coordinate is mistyped, or where a span that grows with the travel is not parallel to it.</remarks>
/// <example><code>PathConsistency check = PathConsistency.Of(belt, travel);   // check.Variation, check.Findings</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PathConsistency
{
    private readonly double _variation;
    private readonly ReadOnlyCollection<Finding> _findings;

    private PathConsistency(double variation, HeadPosition shortest, HeadPosition longest, params Finding[] findings)
    {
        _variation = variation;
        ShortestAt = shortest;
        LongestAt = longest;
        _findings = Array.AsReadOnly(findings);
    }

    /// <summary><see cref="DriveFindings.LengthVaries"/>, or nothing.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Longest minus shortest length over the travel.</summary>
    public Length Variation => Length.FromMeters(_variation);

    /// <summary>Where the belt's way is shortest.</summary>
    public HeadPosition ShortestAt { get; }

    /// <summary>Where the belt's way is longest.</summary>
    public HeadPosition LongestAt { get; }

    /// <summary>Checks a belt at 81 places of the travel.</summary>
    /// <param name="path">The belt.</param>
    /// <param name="travel">Where the head goes.</param>
    /// <param name="largestVariation">Largest variation without a finding, greater than zero; 0.05 mm when null, which is 0.5 N on a metre of belt of 10 kN.</param>
    /// <returns>What was found.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not positive, or somewhere in the travel pulleys overlap or lose the belt.</exception>
    public static PathConsistency Of(BeltPath path, HeadTravel travel, Length? largestVariation = null)
    {
        Guard.NotNull(path);
        double limit = Guard.Positive((largestVariation ?? Length.FromMillimeters(0.05)).Meters, nameof(largestVariation));
        HeadPosition shortest = Guard.NotNull(travel).Middle;
        HeadPosition longest = shortest;
        double least = path.TotalLength(shortest).Meters;
        double most = least;
        foreach (HeadPosition head in travel.Grid())
        {
            double length = path.TotalLength(head).Meters;
            (shortest, least) = length < least ? (head, length) : (shortest, least);
            (longest, most) = length > most ? (head, length) : (longest, most);
        }

        double variation = most - least;
        return variation <= limit
            ? new PathConsistency(variation, shortest, longest)
            : new PathConsistency(variation, shortest, longest, new Finding(
                DriveFindings.LengthVaries,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"The way of belt {path.Name} is {variation * 1000:0.###} mm longer with the head at {longest} than at {shortest}: check centres, radii and sides of wrap."),
                new FindingNumber("variation", variation, "m"),
                new FindingNumber("largestVariation", limit, "m"),
                new FindingNumber("strain", variation / least, "1")));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The variation and where.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"length varies by {_variation * 1000:0.###} mm between {ShortestAt} and {LongestAt}");
}
