using System.Numerics;

namespace PrinterMath.Resonance;

/// <summary>
/// Least worst residual of positive impulses within a duration. It is a game: one side spreads the impulses over times, the other picks a frequency of the ranges and a phase. Both sides add
/// their best answers until neither gains; the value is then the optimum over all sequences, not only a local one.
/// </summary>
internal sealed class RangeGame(RangeLine[] lines, double gap)
{
    private const double PointsForEachPeriod = 24;
    private const int MostRounds = 80;

    private List<double> _shares = [0, 0.5, 1];

    internal List<Answer> Answers { get; private set; } =
        [.. from line in Enumerable.Range(0, lines.Length)
            from omega in new[] { lines[line].LowerOmega, lines[line].UpperOmega }
            select new Answer(line, omega, 0, 0)];

    /// <summary>Times of the impulses that carry something, with their amplitudes, after <see cref="Value"/>.</summary>
    internal (double[] Amplitudes, double[] Times) Impulses { get; private set; } = ([], []);

    private double HighestOmega => lines.Max(line => line.UpperOmega);

    /// <summary>The least worst residual for a duration; the mixtures of both sides are kept for the next duration.</summary>
    internal double Value(double duration, CancellationToken cancellation)
    {
        double value = 1;
        for (int round = 0; round < MostRounds; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            double[] times = [.. _shares.Select(share => share * duration)];
            (value, double[] weights, double[] amplitudes) = MatrixGame.Solve(Payoffs(times, duration));
            Impulses = (amplitudes, times);
            for (int i = 0; i < weights.Length; i++)
            {
                Answers[i] = Answers[i] with { Weight = weights[i] };
            }

            List<Answer> louder = Louder(amplitudes, times, duration, value + (gap / 2));
            List<double> quieter = Quieter(duration, value - (gap / 2));
            if (louder.Count == 0 && quieter.Count == 0)
            {
                // Choices that count for nothing are dropped only now: while both sides still improve, that could go round in circles.
                _shares = [.. _shares.Where((share, i) => amplitudes[i] > 0 || share is 0 or 1)];
                Answers = [.. Answers.Where(answer => answer.Weight > 0)];
                break;
            }

            Answers.AddRange(louder);
            _shares = [.. _shares.Concat(quieter.Select(time => time / duration)).Distinct().Order()];
        }

        return value;
    }

    private double[,] Payoffs(double[] times, double duration)
    {
        double[,] payoffs = new double[Answers.Count, times.Length];
        for (int i = 0; i < Answers.Count; i++)
        {
            Answer answer = Answers[i];
            var turn = Complex.FromPolarCoordinates(1, -answer.Phase);
            for (int j = 0; j < times.Length; j++)
            {
                payoffs[i, j] = (turn * lines[answer.Line].Term(answer.Omega, times[j], duration)).Real;
            }
        }

        return payoffs;
    }

    /// <summary>Peaks of the residual above a level.</summary>
    private List<Answer> Louder(double[] amplitudes, double[] times, double duration, double level)
    {
        List<Answer> found = [];
        for (int l = 0; l < lines.Length; l++)
        {
            RangeLine line = lines[l];
            int steps = line.UpperOmega > line.LowerOmega
                ? Math.Max(8, (int)Math.Ceiling((line.UpperOmega - line.LowerOmega) * duration * PointsForEachPeriod / (2 * Math.PI)))
                : 0;
            foreach (double omega in Peaks.Of(w => line.Residual(w, amplitudes, times, duration).Magnitude, line.LowerOmega, line.UpperOmega, steps, level))
            {
                found.Add(new Answer(l, omega, line.Residual(omega, amplitudes, times, duration).Phase, 0));
            }
        }

        return found;
    }

    /// <summary>Times at which an impulse would do less than a level.</summary>
    private List<double> Quieter(double duration, double level)
    {
        double Effect(double time)
        {
            double sum = 0;
            foreach (Answer answer in Answers)
            {
                if (answer.Weight > 0)
                {
                    sum += answer.Weight * (Complex.FromPolarCoordinates(1, -answer.Phase) * lines[answer.Line].Term(answer.Omega, time, duration)).Real;
                }
            }

            return sum;
        }

        int steps = Math.Max(16, (int)Math.Ceiling(HighestOmega * duration * PointsForEachPeriod / (2 * Math.PI)));
        return Peaks.Of(time => -Effect(time), 0, duration, steps, -level);
    }

    /// <summary>A choice of the other side: a frequency of a line, and the phase at which the residual is read.</summary>
    internal readonly record struct Answer(int Line, double Omega, double Phase, double Weight);
}
