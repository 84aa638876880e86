namespace PrinterMath.Tramming;

/// <summary>
/// Play of some screws: the gap b and what is known of where in it each screw stands. A screw that moved by b or more in one sense stands at that flank; one that moved less keeps a part of what was possible before,
/// at first all of it: the room to the upper flank is uniform between its ends. JCGM 100:2008, 4.3.7, for the rectangular distribution.
/// </summary>
internal sealed record ScrewPlay(int[] Screws, double Gap, double Uncertainty, bool IsStated, double[] Starts)
{
    private const double Step = 0.01;

    /// <summary>Starts to try, in gaps from the middle.</summary>
    private static readonly double[] Grid = [-0.5, -0.375, -0.25, -0.125, 0, 0.125, 0.25, 0.375, 0.5];

    internal static ScrewPlay Of(double gap, params int[] screws) => new(screws, gap, 0, false, new double[screws.Length]);

    internal static ScrewPlay? Stated(SequenceReadings readings, TrammingSequenceOptions options) => options.Play is { SiValue: > 0 } play
        ? Of(play.SiValue, [.. Enumerable.Range(0, readings.Screws.Length)]) with { Uncertainty = play.SiStandardUncertainty, IsStated = true }
        : null;

    /// <summary>The starts, and for a gap that is learned the gap, that explain a fit without play best, one after the other.</summary>
    internal ScrewPlay Refined(SequenceReadings readings, SequenceFit fit)
    {
        ScrewPlay best = this;
        double gain = fit.GainOfOne(best.Lost(readings, best.Gap));
        for (int sweep = 0; sweep < 3; sweep++)
        {
            for (int s = 0; s < Screws.Length; s++)
            {
                int at = s;
                Take(Grid.Select(start => best with { Starts = [.. best.Starts.Select((old, i) => i == at ? start : old)] }));
            }

            if (!IsStated)
            {
                Take(Enumerable.Range(-5, 11).Select(i => best with { Gap = best.Gap * Math.Pow(0.5, sweep + 2) * i / 5 + best.Gap }));
            }
        }

        return best;

        void Take(IEnumerable<ScrewPlay> others)
        {
            foreach (ScrewPlay other in others.ToArray())
            {
                double now = fit.GainOfOne(other.Lost(readings, other.Gap));
                (best, gain) = now > gain ? (other, now) : (best, gain);
            }
        }
    }

    /// <summary>Motion lost by a gap, at every reading.</summary>
    internal double[] Lost(SequenceReadings readings, double gap)
    {
        double[][] lost = [.. Screws.Select((k, s) => PlayOperator.Lost(Moves(readings, k), gap, Starts[s]))];
        return readings.Column(i =>
        {
            double sum = 0;
            for (int s = 0; s < Screws.Length; s++)
            {
                sum += readings.Influence(i, Screws[s]) * lost[s][readings.Pass[i]];
            }

            return sum;
        });
    }

    /// <summary>What a change of the gap does, for each metre.</summary>
    internal double[] Slope(SequenceReadings readings) =>
        [.. Lost(readings, Gap * (1 + Step)).Zip(Lost(readings, Gap * (1 - Step)), (high, low) => (high - low) / (2 * Step * Gap))];

    /// <summary>Columns of what is not known, each with a standard deviation of 1: where in the gap each screw stood at first, and the stated gap itself.</summary>
    internal IEnumerable<double[]> Unknowns(SequenceReadings readings)
    {
        for (int s = 0; s < Screws.Length; s++)
        {
            if (readings.Moves[Screws[s]].Any(move => move != 0))
            {
                double spacing = Grid[1] - Grid[0];
                double low = Math.Max(Grid[0], Starts[s] - spacing), high = Math.Min(Grid[^1], Starts[s] + spacing);
                double[] moves = Moves(readings, Screws[s]);
                double[] below = PlayOperator.Lost(moves, Gap, low), above = PlayOperator.Lost(moves, Gap, high);
                int k = Screws[s];
                yield return readings.Column(i => (above[readings.Pass[i]] - below[readings.Pass[i]]) / (high - low) / Math.Sqrt(12) * readings.Influence(i, k));
            }
        }

        if (IsStated && Uncertainty > 0)
        {
            yield return [.. Slope(readings).Select(slope => slope * Uncertainty)];
        }
    }

    /// <summary>Motion of a screw that is lost before the bed moves in a sense, +1 up or −1 down, and its standard uncertainty.</summary>
    internal (double Room, double Uncertainty) Room(SequenceReadings readings, int screw, int sense)
    {
        if (sense == 0 || !Screws.Contains(screw))
        {
            return (0, 0);
        }

        double low = 0, high = Gap; // room to the upper flank
        foreach (double move in Moves(readings, screw))
        {
            low = Math.Clamp(low - move, 0, Gap);
            high = Math.Clamp(high - move, 0, Gap);
        }

        double middle = (low + high) / 2;
        double room = sense > 0 ? middle : Gap - middle;
        double spread = (high - low) / Math.Sqrt(12);
        double share = room / Gap * Uncertainty;
        return (room, Math.Sqrt((spread * spread) + (share * share)));
    }

    private static double[] Moves(SequenceReadings readings, int screw) =>
        [.. readings.Moves[screw].Select(move => move * readings.Screws[screw].Thread.Lead.SiValue)];
}
