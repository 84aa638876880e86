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

    private PluckConsensus(List<PluckAnalysis> used, List<PluckAnalysis> setAside, Finding? blocked, Measured<Frequency> fundamental)
    {
        Used = used;
        SetAside = setAside;
        Blocked = blocked;
        Fundamental = fundamental;
    }

    internal List<PluckAnalysis> Used { get; }

    internal List<PluckAnalysis> SetAside { get; }

    internal Finding? Blocked { get; }

    internal Measured<Frequency> Fundamental { get; }

    internal static PluckConsensus Of(List<PluckAnalysis> plucks)
    {
        List<PluckAnalysis> heard = [.. plucks.Where(p => p.Blocked is null)];
        if (heard.Count == 0)
        {
            return new PluckConsensus([], [], plucks.MaxBy(p => p.Stretch.Energy)!.Blocked, default);
        }

        double[] sorted = [.. heard.Select(p => p.FirstPartial).Order()];
        double median = sorted[(sorted.Length - 1) / 2];
        List<PluckAnalysis> used = [.. heard.Where(p => Math.Abs((p.FirstPartial / median) - 1) <= Agreement)];
        if (2 * used.Count <= heard.Count)
        {
            return new PluckConsensus([], heard, PluckSentences.Disagree(heard.Count, sorted[0], sorted[^1]), default);
        }

        return new PluckConsensus(used, [.. heard.Except(used)], null, Combine(used));
    }

    private static Measured<Frequency> Combine(List<PluckAnalysis> used)
    {
        int k = used.Count;
        double mean = used.Average(p => p.FirstPartial);
        double own = used.Average(p => p.Uncertainty * p.Uncertainty);
        double ownFreedom = used.Min(p => p.DegreesOfFreedom);
        if (k == 1)
        {
            return Measured<Frequency>.FromSi(mean, Math.Sqrt(own), ownFreedom);
        }

        double between = used.Sum(p => (p.FirstPartial - mean) * (p.FirstPartial - mean)) / (k - 1) / k;
        double total = own + between;
        double freedom = total * total / ((own * own / ownFreedom) + (between * between / (k - 1)));
        return Measured<Frequency>.FromSi(mean, Math.Sqrt(total), Math.Max(1, freedom));
    }
}
