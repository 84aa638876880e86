namespace PrinterMath.Tension;

/// <summary>Searches the strings (f0, B) that may have made a set of peaks and ranks them by log odds.</summary>
/// <remarks>
/// Each peak over any small integer is tried as f0 with several B. Partials are then followed upwards, the model being corrected by every
/// one that is found. A found partial adds ln(p·N(deviation; σ)/λ), λ the density of peaks by chance, and a tenth of its level in dB, since strong peaks
/// are seldom strays; a partial that should have been heard between or near its neighbours and was not takes off the
/// logarithm of how seldom that happens.
/// </remarks>
internal sealed class CandidateSearch
{
    private const double Detection = 0.75;
    private const double ModelScatter = 0.003;
    private const double MostCost = 2;
    private const int Beyond = 4;
    private const int MostPartials = 40;
    private const int Anchors = 12;
    private const int LargestDivisor = 12;
    private const double OutOfTheRace = 20;
    private static readonly double[] Stiffnesses = [0, 1e-4, 4e-4, 1.5e-3];

    private readonly List<SpectralPeak> _peaks;
    private readonly double _resolution;
    private readonly double _highest;
    private readonly double[] _density;
    private readonly List<int> _numbers = new(MostPartials);
    private readonly List<int> _chosen = new(MostPartials);

    internal CandidateSearch(List<SpectralPeak> peaks, double resolution, double highest)
    {
        _peaks = peaks;
        _resolution = resolution;
        _highest = highest;
        _density = Densities(peaks, highest);
    }

    /// <summary>Best match near each distinct f0 in the range, best first.</summary>
    internal List<StringMatch> Rank(double lowestF0, double highestF0)
    {
        List<double> tries = Tries(lowestF0, highestF0);
        List<StringMatch> matches = [];
        double best = double.NegativeInfinity;
        if (_peaks.Count == 0)
        {
            return matches;
        }

        foreach (double f0 in tries)
        {
            foreach (double stiffness in Stiffnesses)
            {
                StiffString model = new(f0 / Math.Sqrt(1 + stiffness), stiffness);
                double odds = Follow(ref model);
                if (_numbers.Count > 0 && model.F0 >= lowestF0 && model.F0 <= highestF0 && odds > best - OutOfTheRace)
                {
                    best = Math.Max(best, odds);
                    matches.Add(new StringMatch(model, [.. _numbers], [.. _chosen], odds));
                }
            }
        }

        matches.Sort((a, b) => b.LogOdds.CompareTo(a.LogOdds));
        List<StringMatch> distinct = [];
        foreach (StringMatch match in matches)
        {
            if (!distinct.Exists(d => Math.Abs(Math.Log(d.Model.F0 / match.Model.F0)) < 0.02))
            {
                distinct.Add(match);
            }
        }

        return distinct;
    }

    /// <summary>The match that grows from a given string.</summary>
    internal StringMatch Match(StiffString model)
    {
        double odds = Follow(ref model);
        return new StringMatch(model, [.. _numbers], [.. _chosen], odds);
    }

    private List<double> Tries(double lowest, double highest)
    {
        SortedSet<double> all = [];
        foreach (SpectralPeak peak in _peaks.OrderByDescending(p => p.Power).Take(Anchors))
        {
            for (int k = 1; k <= LargestDivisor; k++)
            {
                all.Add(peak.Frequency / k);
            }
        }

        for (int i = 1; i < _peaks.Count; i++)
        {
            all.Add(_peaks[i].Frequency - _peaks[i - 1].Frequency);
        }

        List<double> tries = [];
        foreach (double f in all)
        {
            if (f >= lowest * 0.99 && f <= highest * 1.01 && (tries.Count == 0 || f > tries[^1] * 1.001))
            {
                tries.Add(f);
            }
        }

        return tries;
    }

    /// <summary>Peaks per hertz, at least as strong, around each peak, counted over an octave.</summary>
    private static double[] Densities(List<SpectralPeak> peaks, double highest)
    {
        double[] densities = new double[peaks.Count];
        for (int i = 0; i < densities.Length; i++)
        {
            double from = peaks[i].Frequency / Math.Sqrt(2), to = Math.Min(highest, peaks[i].Frequency * Math.Sqrt(2));
            int inside = 0, everywhere = 0;
            foreach (SpectralPeak peak in peaks)
            {
                bool asStrong = peak.Excess >= peaks[i].Excess;
                everywhere += asStrong ? 1 : 0;
                inside += asStrong && peak.Frequency >= from && peak.Frequency <= to ? 1 : 0;
            }

            densities[i] = Math.Max(inside / (to - from), everywhere / highest);
        }

        return densities;
    }

    /// <summary>The log odds of the string that grows from a guess; its partials and their peaks stand in the two lists.</summary>
    private double Follow(ref StiffString model)
    {
        RunningStringFit fit = new(model, ModelScatter);
        _numbers.Clear();
        _chosen.Clear();
        int near = 0;
        for (int n = 1; n <= MostPartials; n++)
        {
            double expected = model.Partial(n);
            if (expected > _highest)
            {
                break;
            }

            near = Nearest(expected, near);
            double sigma = Sigma(expected);
            if (Math.Abs(_peaks[near].Frequency - expected) < 3 * sigma && (_chosen.Count == 0 || _chosen[^1] != near))
            {
                _numbers.Add(n);
                _chosen.Add(near);
                fit.Add(n, _peaks[near].Frequency, sigma);
                model = fit.Model;
            }
        }

        return Score(model, _numbers, _chosen);
    }

    private double Score(StiffString model, List<int> numbers, List<int> chosen)
    {
        double odds = 0;
        for (int i = 0; i < numbers.Count; i++)
        {
            SpectralPeak peak = _peaks[chosen[i]];
            double expected = model.Partial(numbers[i]);
            double sigma = Sigma(expected);
            double z = (peak.Frequency - expected) / sigma;
            odds += Math.Log(Detection / (Math.Sqrt(2 * Math.PI) * sigma * _density[chosen[i]])) - (z * z / 2);
        }

        return odds - Missing(model, numbers, chosen);
    }

    /// <summary>
    /// What the partials cost that should have been heard and were not: those between two heard ones, below the first, or up to four above the last.
    /// A pluck at a random place along the span puts a partial D dB below its neighbours with probability (2/π)·10^(−D/20), the chance of |sin| being so small.
    /// </summary>
    private double Missing(StiffString model, List<int> numbers, List<int> chosen)
    {
        double cost = 0;
        int next = 0, last = numbers.Count == 0 ? 0 : numbers[^1];
        for (int n = 1; n <= Math.Min(2 * last, last + Beyond) && model.Partial(n) < _highest; n++)
        {
            if (next < numbers.Count && numbers[next] == n)
            {
                next++;
                continue;
            }

            double below = next > 0 ? _peaks[chosen[next - 1]].Excess - (12 * Math.Log2((double)n / numbers[next - 1])) : double.PositiveInfinity;
            double above = next < numbers.Count ? _peaks[chosen[next]].Excess - (next == 0 ? RollOff(model.Partial(n)) : 0) : double.PositiveInfinity;
            double margin = Math.Min(below, above);
            cost += margin > 0 ? Math.Min(MostCost, (margin * Math.Log(10) / 20) + Math.Log(Math.PI / 2)) : 0;
        }

        return cost;
    }

    /// <summary>A microphone may lose 12 dB per octave below 150 Hz.</summary>
    private static double RollOff(double frequency) => frequency < 150 ? 12 * Math.Log2(150 / frequency) : 0;

    private double Sigma(double frequency) => (ModelScatter * frequency) + (0.21 * _resolution);

    /// <summary>The peak nearest to a frequency, from a place that is not above it.</summary>
    private int Nearest(double frequency, int from)
    {
        while (from + 1 < _peaks.Count && _peaks[from + 1].Frequency - frequency < frequency - _peaks[from].Frequency)
        {
            from++;
        }

        return from;
    }
}
