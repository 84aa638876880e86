using System.Numerics;

namespace PrinterMath.Resonance;

/// <summary>
/// Sharpens the answer of the game to rounding. At the optimum the residual touches the tolerance at a few frequencies, and the weighted sum of what an impulse does at these touches the
/// tolerance from above at the impulses' times; both together have as many equations as unknowns (amplitudes, times, weights, phases, frequencies), and Newton's method solves them.
/// </summary>
internal sealed class InsensitivityOptimum
{
    private const double Together = 0.03;
    private const double Negligible = 1e-5;

    private readonly RangeLine[] _lines;
    private readonly double _tolerance;
    private readonly double _scale;
    private readonly RangeGame.Answer[] _touches;
    private readonly bool[] _isFree;
    private readonly int _impulses;

    private InsensitivityOptimum(RangeLine[] lines, double tolerance, RangeGame.Answer[] touches, int impulses)
    {
        _lines = lines;
        _tolerance = tolerance;
        _touches = touches;
        _impulses = impulses;
        _scale = lines.Max(line => line.UpperOmega);
        _isFree = [.. touches.Select(touch => touch.Omega > lines[touch.Line].LowerOmega && touch.Omega < lines[touch.Line].UpperOmega)];
    }

    /// <summary>The sequence, sharpened where the equations settle; else as the game left it, with impulses that belong together joined.</summary>
    internal static (double[] Amplitudes, double[] Times) Sharpened(RangeLine[] lines, RangeGame game, double duration, double tolerance)
    {
        double scale = lines.Max(line => line.UpperOmega);
        (double[] amplitudes, double[] times) = Impulses(game, duration, Together / scale);
        RangeGame.Answer[] touches = Touches(lines, game, Together / duration);
        var optimum = new InsensitivityOptimum(lines, tolerance, touches, times.Length);
        int n = times.Length;
        double[] x =
        [
            .. amplitudes, .. times[1..], .. touches.Select(touch => touch.Weight), .. touches.Select(touch => touch.Phase),
            .. touches.Where((_, k) => optimum._isFree[k]).Select(touch => touch.Omega),
        ];
        bool settled = NewtonIteration.TrySolve(Differences.SlopesOf(optimum.Evaluate), x);
        double[] sharp = x[..n], when = [0, .. x[n..((2 * n) - 1)]];
        bool valid = settled && sharp.All(a => a > 0) && Enumerable.Range(1, n - 1).All(i => when[i] > when[i - 1]) && x[((2 * n) - 1)..((2 * n) - 1 + touches.Length)].All(y => y > 0);
        return valid && optimum.Keeps(sharp, when, 1e-9) ? (sharp, when)
            : optimum.Keeps(amplitudes, times, 1e-4) ? (amplitudes, times)
            : game.Impulses;
    }

    private static (double[] Amplitudes, double[] Times) Impulses(RangeGame game, double duration, double together)
    {
        List<(double Time, double Amplitude)> joined = [];
        foreach ((double time, double amplitude) in game.Impulses.Times.Zip(game.Impulses.Amplitudes).Where(pair => pair.Second > Negligible))
        {
            if (joined.Count > 0 && time - joined[^1].Time < together)
            {
                (double t, double a) = joined[^1];
                double mean = t == 0 ? 0 : time == duration ? duration : ((t * a) + (time * amplitude)) / (a + amplitude);
                joined[^1] = (mean, a + amplitude);
            }
            else
            {
                joined.Add((time, amplitude));
            }
        }

        double sum = joined.Sum(pair => pair.Amplitude);
        return ([.. joined.Select(pair => pair.Amplitude / sum)], [.. joined.Select(pair => pair.Time)]);
    }

    private static RangeGame.Answer[] Touches(RangeLine[] lines, RangeGame game, double together)
    {
        List<RangeGame.Answer> joined = [];
        foreach (RangeGame.Answer answer in game.Answers.Where(answer => answer.Weight > Negligible).OrderBy(answer => answer.Line).ThenBy(answer => answer.Omega))
        {
            if (joined.Count > 0 && joined[^1].Line == answer.Line && answer.Omega - joined[^1].Omega < together)
            {
                RangeGame.Answer last = joined[^1];
                double weight = last.Weight + answer.Weight;
                RangeLine line = lines[answer.Line];
                double mean = last.Omega == line.LowerOmega ? last.Omega
                    : answer.Omega == line.UpperOmega ? answer.Omega
                    : ((last.Omega * last.Weight) + (answer.Omega * answer.Weight)) / weight;
                Complex phase = Complex.FromPolarCoordinates(last.Weight, last.Phase) + Complex.FromPolarCoordinates(answer.Weight, answer.Phase);
                joined[^1] = new RangeGame.Answer(answer.Line, mean, phase.Phase, weight);
            }
            else
            {
                joined.Add(answer);
            }
        }

        return [.. joined];
    }

    private void Evaluate(double[] x, double[] values)
    {
        int n = _impulses, m = _touches.Length;
        double[] amplitudes = x[..n], times = [0, .. x[n..((2 * n) - 1)]];
        double end = times[^1];
        int weightsAt = (2 * n) - 1, phasesAt = weightsAt + m, omega = phasesAt + m, row = 0;
        double[] effects = new double[n], slopes = new double[n];
        values[row++] = amplitudes.Sum() - 1;
        values[row++] = x[weightsAt..phasesAt].Sum() - 1;
        for (int k = 0; k < m; k++)
        {
            RangeLine line = _lines[_touches[k].Line];
            double w = _isFree[k] ? x[omega++] : _touches[k].Omega;
            var turn = Complex.FromPolarCoordinates(1, -x[phasesAt + k]);
            Complex e = 0, byOmega = 0;
            for (int i = 0; i < n; i++)
            {
                Complex term = turn * line.Term(w, times[i], end);
                e += amplitudes[i] * term;
                byOmega += amplitudes[i] * line.RateByOmega(times[i], end) * term;
                effects[i] += x[weightsAt + k] * term.Real;
                slopes[i] += x[weightsAt + k] * (line.RateByTime(w) * term).Real;
            }

            values[row++] = (e.Real / _tolerance) - 1;
            values[row++] = e.Imaginary / _tolerance;
            if (_isFree[k])
            {
                values[row++] = byOmega.Real / _tolerance;
            }
        }

        // The effect at the first impulse follows from the others, since both sums weigh to the tolerance.
        for (int i = 1; i < n; i++)
        {
            values[row++] = (effects[i] / _tolerance) - 1;
            if (i < n - 1)
            {
                values[row++] = slopes[i] / (_tolerance * _scale);
            }
        }
    }

    private bool Keeps(double[] amplitudes, double[] times, double excess)
    {
        double end = times[^1];
        foreach (RangeLine line in _lines)
        {
            int steps = line.UpperOmega > line.LowerOmega ? Math.Max(16, (int)((line.UpperOmega - line.LowerOmega) * end * 8)) : 0;
            if (Peaks.Of(w => line.Residual(w, amplitudes, times, end).Magnitude, line.LowerOmega, line.UpperOmega, steps, _tolerance * (1 + excess)).Count > 0)
            {
                return false;
            }
        }

        return true;
    }
}
