namespace PrinterMath.Tension;

/// <summary>Log likelihood ratio of a string against the one d times as high, from the spectrum at the places where only the lower one has partials.</summary>
/// <remarks>
/// <para>At such a place noise of mean power N leaves a ratio ρ = P/N with density e^(−ρ), a partial of mean ratio S leaves e^(−ρ/(1+S))/(1+S). S is the
/// level of the neighbouring partials that both strings have. A pluck at a random place takes D dB off a partial with probability (2/π)·10^(−D/20), a
/// mixture of steps here; and the whole class may lie a common gain lower or higher, as it does when the span is plucked or heard near a node.</para>
/// <para>The likelihood is averaged over the bins where the place may lie, narrowly and, for half the weight, widely;
/// both are bounded, since something else may sound there (<see cref="MostAtPlace"/>, <see cref="MostAround"/>) and a partial may be drawn aside (<see cref="Least"/>). What lies 30 dB below the neighbouring partials is no
/// evidence either way: bodies, fingers and other strings sound there.</para>
/// <para>Source: Swerling 1960, Probability of detection for fluctuating targets, IRE Transactions IT-6, for the density of ρ (from memory).</para>
/// </remarks>
internal readonly ref struct OctaveTest(PluckSpectrum spectrum, IReadOnlyList<double> steady, double highest)
{
    private const double MostAtPlace = 400;
    private const double MostAround = 20;
    private const double Least = 0.05;
    private const int MostPlaces = 16;
    private const double Scatter = 0.0015;
    private const double Stray = 1e-3;
    private const double Wide = 3;
    private const double LevelStep = 4;
    private const double StepDecibels = 6.02;
    private const int FadingStride = 2;

    /// <summary>Odds of a class gain of 30, 24, ... −30 dB.</summary>
    private static readonly double[] ClassOdds = [0.01, 0.01, 0.01, 0.02, 0.03, 0.78, 0.05, 0.04, 0.03, 0.015, 0.005];

    /// <summary>Odds that a partial is 0, 12, 24, 36 dB weaker than it might be.</summary>
    private static readonly double[] FadingOdds = [0.75, 0.185, 0.047, 0.018];

    private readonly PluckSpectrum _spectrum = spectrum;
    private readonly IReadOnlyList<double> _steady = steady;
    private readonly double _highest = highest;

    /// <summary>ln of the odds that <paramref name="upper"/>'s partials are every <paramref name="divisor"/>-th of a string that much lower.</summary>
    internal double LowerOverUpper(StiffString upper, int divisor)
    {
        StiffString lower = new(upper.F0 / divisor, upper.B / (divisor * divisor));
        Span<double> logs = stackalloc double[ClassOdds.Length];
        double below = 0;
        int places = 0;
        for (int n = 1; places < MostPlaces && lower.Partial(n + 1) < _highest; n++)
        {
            double place = lower.Partial(n);
            if (n % divisor == 0)
            {
                below = Largest(place, lower.F0);
                continue;
            }

            if (place < PluckAnalyzer.LowestLine || IsSteady(place))
            {
                continue;
            }

            double above = Largest(upper.Partial((n / divisor) + 1), lower.F0);
            double expected = n < divisor ? above : Math.Sqrt(below * above);
            double noise = Math.Max(1, expected * Stray);
            AddPlace(logs, place, lower.F0, noise, Math.Max(1, expected / noise), n < divisor ? (int)Math.Round(RollOff(place) / StepDecibels) : 0);
            places++;
        }

        double best = double.NegativeInfinity, sum = 0;
        foreach (double log in logs)
        {
            best = Math.Max(best, log);
        }

        for (int g = 0; g < logs.Length; g++)
        {
            sum += ClassOdds[g] * Math.Exp(logs[g] - best);
        }

        return best + Math.Log(sum);
    }

    private void AddPlace(Span<double> logs, double place, double spacing, double noise, double expected, int rolledOff)
    {
        int levels = ClassOdds.Length + (FadingStride * (FadingOdds.Length - 1)) + rolledOff;
        Span<double> atPlace = stackalloc double[levels], around = stackalloc double[levels];
        double floor = Floor(place, spacing, noise), narrow = Width(place, spacing);
        Average(atPlace, place, narrow, floor, expected);
        Average(around, place, Math.Min(Wide * narrow, 0.3 * spacing), floor, expected);
        for (int g = 0; g < logs.Length; g++)
        {
            double full = (Capped(Faded(atPlace[g..]), MostAtPlace) + Capped(Faded(around[g..]), MostAround)) / 2;
            double rolled = (Capped(Faded(atPlace[(g + rolledOff)..]), MostAtPlace) + Capped(Faded(around[(g + rolledOff)..]), MostAround)) / 2;
            logs[g] += Math.Log(Math.Max(Least, (full + rolled) / 2));
        }
    }

    private static double Faded(ReadOnlySpan<double> levels)
    {
        double sum = 0;
        for (int i = 0; i < FadingOdds.Length; i++)
        {
            sum += FadingOdds[i] * levels[FadingStride * i];
        }

        return sum;
    }

    private static double Capped(double likelihood, double most) => likelihood / (1 + (likelihood / most));

    /// <summary>The likelihood ratio of each level, averaged over the bins within a width.</summary>
    private void Average(Span<double> levels, double place, double width, double floor, double expected)
    {
        double bin = _spectrum.BinHertz;
        int from = Math.Max(1, (int)Math.Ceiling((place - width) / bin)), to = Math.Min(_spectrum.Power.Length - 1, (int)((place + width) / bin));
        double share = 1.0 / Math.Max(1, to - from + 1), loudest = expected * Math.Pow(LevelStep, ClassOdds.Length / 2);
        levels.Clear();
        for (int k = from; k <= to; k++)
        {
            double ratio = Math.Min(_spectrum.Power[k] / floor, 100), mean = loudest;
            for (int i = 0; i < levels.Length; i++)
            {
                levels[i] += share * Math.Exp(ratio * mean / (1 + mean)) / (1 + mean);
                mean /= LevelStep;
            }
        }
    }

    /// <summary>Noise at a place, or what leaks there from either side if that is more.</summary>
    private double Floor(double place, double spacing, double noise)
    {
        double bin = _spectrum.BinHertz, inner = Math.Max(2.5 * _spectrum.Resolution, 0.15 * spacing), outer = 0.35 * spacing;
        double floor = noise * _spectrum.FloorAt(place / bin), sum = 0;
        int count = 0, centre = (int)Math.Round(place / bin);
        for (int k = (int)Math.Ceiling(inner / bin); k <= (int)(outer / bin); k++)
        {
            if (centre - k > 0 && centre + k < _spectrum.Power.Length)
            {
                sum += _spectrum.Power[centre - k] + _spectrum.Power[centre + k];
                count += 2;
            }
        }

        return count > 0 ? Math.Max(floor, sum / count) : floor;
    }

    private double Largest(double place, double spacing)
    {
        double width = Width(place, spacing), bin = _spectrum.BinHertz, largest = 0;
        int to = Math.Min(_spectrum.Power.Length - 1, (int)((place + width) / bin));
        for (int k = Math.Max(1, (int)((place - width) / bin)); k <= to; k++)
        {
            largest = Math.Max(largest, _spectrum.Power[k]);
        }

        return largest / _spectrum.FloorAt(place / bin);
    }

    private double Width(double place, double spacing) => Math.Min((Scatter * place) + (0.35 * _spectrum.Resolution), 0.2 * spacing);

    private bool IsSteady(double place)
    {
        foreach (double line in _steady)
        {
            if (Math.Abs(line - place) < 2.5 * _spectrum.Resolution)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>A microphone may lose 12 dB per octave below 150 Hz: it does in half of all cases.</summary>
    private static double RollOff(double frequency) => frequency < 150 ? 12 * Math.Log2(150 / frequency) : 0;
}
