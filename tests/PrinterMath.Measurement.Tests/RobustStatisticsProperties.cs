using FsCheck.Xunit;

namespace PrinterMath.Measurement.Tests;

public class RobustStatisticsProperties
{
    // Lattice readings: shifts and powers of two are exact, so the laws hold to the last digit.
    [Property(Arbitrary = [typeof(ReadingArbitraries)])]
    public bool MedianAndDeviationFollowShiftAndScale(ReadingSet set)
    {
        double[] moved = [.. set.Values.Select(x => (-4 * x) + 3)];
        return Median.Of(moved) == (-4 * Median.Of(set.Values)) + 3
            && MedianAbsoluteDeviation.Unscaled(moved) == 4 * MedianAbsoluteDeviation.Unscaled(set.Values);
    }

    [Property(Arbitrary = [typeof(ReadingArbitraries)])]
    public bool OrderDoesNotMatter(ReadingSet set)
    {
        double[] reversed = [.. Enumerable.Reverse(set.Values)];
        OutlierReport one = HampelIdentifier.Find(set.Values), other = HampelIdentifier.Find(reversed);
        return Median.Of(reversed) == Median.Of(set.Values)
            && MedianAbsoluteDeviation.Of(reversed) == MedianAbsoluteDeviation.Of(set.Values)
            && one.TryGetIndices(out IReadOnlyList<int> a) == other.TryGetIndices(out IReadOnlyList<int> b)
            && a.SequenceEqual(b.Select(i => set.Values.Length - 1 - i).Order());
    }

    // The search ends within 1e-12 spreads of rest; contraction leaves at most a few times that.
    [Property(Arbitrary = [typeof(ReadingArbitraries)])]
    public bool LocationsFollowShiftAndScale(ReadingSet set)
    {
        double[] moved = [.. set.Values.Select(x => (-4 * x) + 3)];
        return Agree(HuberLocation.Of(set.Values), HuberLocation.Of(moved)) && Agree(AlgorithmA.Of(set.Values), AlgorithmA.Of(moved));

        static bool Agree(RobustLocation one, RobustLocation other) =>
            one.TryGetLocation(out double m, out double u) == other.TryGetLocation(out double moved, out double scaled)
            && (u == 0 || (Math.Abs(moved - ((-4 * m) + 3)) < 1e-9 * scaled && Math.Abs(scaled - (4 * u)) < 1e-9 * scaled));
    }

    [Property(Arbitrary = [typeof(ReadingArbitraries)], MaxTest = 300)]
    public bool SearchesEndBeforeTheirLimit(ReadingSet set) =>
        !HuberLocation.Of(set.Values).Findings.Concat(AlgorithmA.Of(set.Values).Findings).Any(f => f.Code == "robust.iterations")
        && HuberLocation.Of(set.Values).Iterations <= 60;

    // One reading of five or more, taken as far away as one likes, moves the location by a bounded amount.
    [Property(Arbitrary = [typeof(ReadingArbitraries)])]
    public bool OneWildReadingMovesTheLocationLittle(ReadingSet set)
    {
        double[] far = [.. set.Values], farther = [.. set.Values];
        far[0] = 1e6;
        farther[0] = 1e12;
        return !HuberLocation.Of(far).TryGetLocation(out double a, out double u)
            || (HuberLocation.Of(farther).TryGetLocation(out double b, out _) && Math.Abs(a - b) < 1e-9 * u && Math.Abs(a) < 1000);
    }
}
