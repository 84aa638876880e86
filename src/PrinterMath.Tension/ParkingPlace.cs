using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Where to park the head before plucking, so that the spans to be heard are as long as asked.</summary>
/// <remarks>
/// Along the line through the middle of the travel parallel to x, then to y, the place nearest to the middle is found by halving.
/// Caution: power off before you push the head by hand, and push slowly: the motors turn into generators.
/// </remarks>
/// <example><code>
/// ParkingPlace place = ParkingPlace.ForEqualSpans(layout.BeltA, 0, layout.BeltB, 0, layout.Travel);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ParkingPlace
{
    private const int Steps = 64;
    private const double Close = 1e-9;
    private readonly HeadPosition? _position;
    private readonly ReadOnlyCollection<Finding> _findings;

    private ParkingPlace(HeadPosition? position, params Finding[] findings)
    {
        _position = position;
        _findings = Array.AsReadOnly(findings);
    }

    /// <summary><see cref="DriveFindings.NoParkingPlace"/>, or nothing.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Where to park the head.</summary>
    /// <exception cref="IndeterminateException">No place within the travel serves.</exception>
    public HeadPosition Position => _position ?? throw new IndeterminateException(_findings[0]);

    /// <summary>The place, if there is one.</summary>
    /// <param name="position">The place, or the origin.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetPosition(out HeadPosition position)
    {
        position = _position.GetValueOrDefault();
        return _position is not null;
    }

    /// <summary>Where a span of one belt is as long as a span of another, so that equal tension sounds equal.</summary>
    /// <param name="first">One belt.</param>
    /// <param name="firstSpan">Its span, from 0.</param>
    /// <param name="second">The other belt.</param>
    /// <param name="secondSpan">Its span, from 0.</param>
    /// <param name="travel">Where the head goes.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such span, or pulleys overlap within the travel.</exception>
    public static ParkingPlace ForEqualSpans(BeltPath first, int firstSpan, BeltPath second, int secondSpan, HeadTravel travel)
    {
        Guard.NotNull(first);
        Guard.NotNull(second);
        return Find(
            head => first.SpanMeters(firstSpan, head) - second.SpanMeters(secondSpan, head),
            Guard.NotNull(travel),
            nearest => FormattableString.Invariant($"Nowhere on the middle lines of the travel are '{first.SpanName(firstSpan)}' and '{second.SpanName(secondSpan)}' equally long; they differ by {nearest * 1000:0.#} mm at least."));
    }

    /// <summary>Where a span has a length that was asked for.</summary>
    /// <param name="path">The belt.</param>
    /// <param name="span">Its span, from 0.</param>
    /// <param name="length">Length asked for, greater than zero.</param>
    /// <param name="travel">Where the head goes.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is not positive, no such span, or pulleys overlap within the travel.</exception>
    public static ParkingPlace ForSpanLength(BeltPath path, int span, Length length, HeadTravel travel)
    {
        Guard.NotNull(path);
        double asked = Guard.Positive(length.Meters, nameof(length));
        return Find(
            head => path.SpanMeters(span, head) - asked,
            Guard.NotNull(travel),
            nearest => FormattableString.Invariant($"Nowhere on the middle lines of the travel is '{path.SpanName(span)}' {asked * 1000:0.#} mm long; it misses by {nearest * 1000:0.#} mm at least."));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The place, or the finding that stands in its stead.</returns>
    public override string ToString() => _position?.ToString() ?? _findings[0].ToString();

    private static ParkingPlace Find(Func<HeadPosition, double> miss, HeadTravel travel, Func<double, string> sentence)
    {
        if (Math.Abs(miss(travel.Middle)) < Close)
        {
            return new ParkingPlace(travel.Middle);
        }

        HeadPosition? place = Along(share => miss(travel.At(share, 0.5))) is { } x ? travel.At(x, 0.5)
            : Along(share => miss(travel.At(0.5, share))) is { } y ? travel.At(0.5, y)
            : null;
        if (place is not null)
        {
            return new ParkingPlace(place);
        }

        double nearest = Enumerable.Range(0, Steps + 1).Select(i => (double)i / Steps)
            .Min(share => Math.Min(Math.Abs(miss(travel.At(share, 0.5))), Math.Abs(miss(travel.At(0.5, share)))));
        return new ParkingPlace(null, new Finding(
            DriveFindings.NoParkingPlace, FindingSeverity.Blocking, sentence(nearest), new FindingNumber("smallestDifference", nearest, "m")));
    }

    /// <summary>The root nearest to one half, or null.</summary>
    private static double? Along(Func<double, double> miss)
    {
        double? best = null;
        for (int i = 0; i < Steps; i++)
        {
            double low = (double)i / Steps;
            double high = (double)(i + 1) / Steps;
            double atLow = miss(low);
            double atHigh = miss(high);
            if (Math.Sign(atLow) * Math.Sign(atHigh) > 0)
            {
                continue;
            }

            double root = atLow == 0 ? low : atHigh == 0 ? high : Halve(miss, low, high, Math.Sign(atLow));
            best = Math.Abs(root - 0.5) < Math.Abs((best ?? double.PositiveInfinity) - 0.5) ? root : best;
        }

        return best;
    }

    private static double Halve(Func<double, double> miss, double low, double high, int signAtLow)
    {
        double middle = low + ((high - low) / 2);
        while (middle > low && middle < high)
        {
            (low, high) = Math.Sign(miss(middle)) == signAtLow ? (middle, high) : (low, middle);
            middle = low + ((high - low) / 2);
        }

        return middle;
    }
}
