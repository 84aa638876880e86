using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Combines the plucks of one recording.</summary>
/// <remarks>
/// Plucks within 3 % of the median agree. Their mean is reported with u² = ū² + s²/k: ū, the root mean square of their own uncertainties, is not
/// divided by k, since the misfit of a partial is the same in every pluck of one span; s is the scatter between them, its degrees of freedom k − 1.
/// </remarks>
internal sealed class PluckConsensus
{
    private const double Agreement = 0.03;

    private PluckConsensus(List<PluckAnalysis> used, List<PluckAnalysis> setAside, Finding? blocked, Measured<Frequency> fundamental, Measured<Frequency>? limit)
    {
        Used = used;
        SetAside = setAside;
        Blocked = blocked;
        Fundamental = fundamental;
        SmallAmplitudeLimit = limit;
    }

    internal List<PluckAnalysis> Used { get; }

    internal List<PluckAnalysis> SetAside { get; }

    internal Finding? Blocked { get; }

    internal Measured<Frequency> Fundamental { get; }

    internal Measured<Frequency>? SmallAmplitudeLimit { get; }

    internal static PluckConsensus Of(List<PluckAnalysis> plucks)
    {
        List<PluckAnalysis> heard = [.. plucks.Where(p => p.Blocked is null)];
        if (heard.Count == 0)
        {
            return new PluckConsensus([], [], plucks.MaxBy(p => p.Stretch.Energy)!.Blocked, default, null);
        }

        double[] sorted = [.. heard.Select(p => p.FirstPartial).Order()];
        double median = sorted[(sorted.Length - 1) / 2];
        List<PluckAnalysis> used = [.. heard.Where(p => Math.Abs((p.FirstPartial / median) - 1) <= Agreement)];
        if (2 * used.Count <= heard.Count)
        {
            return new PluckConsensus([], heard, PluckSentences.Disagree(heard.Count, sorted[0], sorted[^1]), default, null);
        }

        return new PluckConsensus(used, [.. heard.Except(used)], null, Combine(used, p => (p.FirstPartial, p.Uncertainty, p.DegreesOfFreedom)), Limit(used));
    }

    private static Measured<Frequency>? Limit(List<PluckAnalysis> used) =>
        used.TrueForAll(p => p.SmallAmplitudeLimit is > 0) ? Combine(used, p => (p.SmallAmplitudeLimit!.Value, p.LimitUncertainty, p.LimitDegreesOfFreedom)) : null;

    private static Measured<Frequency> Combine(List<PluckAnalysis> used, Func<PluckAnalysis, (double Value, double U, double Freedom)> what)
    {
        int k = used.Count;
        List<(double Value, double U, double Freedom)> plucks = used.ConvertAll(p => what(p));
        double mean = plucks.Average(p => p.Value), own = plucks.Average(p => p.U * p.U), ownFreedom = plucks.Min(p => p.Freedom);
        if (k == 1)
        {
            return Measured<Frequency>.FromSi(mean, Math.Sqrt(own), ownFreedom);
        }

        double between = plucks.Sum(p => (p.Value - mean) * (p.Value - mean)) / (k - 1) / k;
        double total = own + between;
        double freedom = total * total / ((own * own / ownFreedom) + (between * between / (k - 1)));
        return Measured<Frequency>.FromSi(mean, Math.Sqrt(total), Math.Max(1, freedom));
    }
}
