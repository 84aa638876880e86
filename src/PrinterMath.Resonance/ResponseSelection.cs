using MathNet.Numerics.Distributions;

namespace PrinterMath.Resonance;

/// <summary>Adds poles to a response's remainders one at a time while noise alone would hardly show the like, drops those that later ones make needless, and asks which stay where they are when one more is allowed.</summary>
/// <remarks>
/// With known errors the gain is that of the sum of squares over the inflation of correlated lines, χ² with four degrees of freedom; without, it is the logarithm of the ratio of sums times the degrees of
/// freedom. The false-alarm probability is shared among all lines (Bonferroni).
/// </remarks>
internal sealed class ResponseSelection
{
    private const int Starts = 3;
    private const double Ladder = 1.7;
    private const double WidestStart = 0.2;
    private readonly ResponseProblem _problem;
    private readonly double _needed;
    private readonly CancellationToken _cancellation;

    private ResponseSelection(ResponseProblem problem, double falseAlarm, CancellationToken cancellation)
    {
        _problem = problem;
        _cancellation = cancellation;
        _needed = ChiSquared.InvCDF(4, 1 - (falseAlarm / problem.Count));
        Model = ResponseModel.With(problem, [])!;
    }

    internal ResponseModel Model { get; private set; }

    /// <summary>The fit with one pole more than those that were found; null when none could be had.</summary>
    internal ResponseModel? OneMore { get; private set; }

    /// <summary>Poles of each order tried, from one on.</summary>
    internal List<ResponsePole[]> Orders { get; } = [];

    /// <summary>Poles that were fitted and found not significant, with gain over need.</summary>
    internal List<(ResponsePole Pole, double Significance)> Dropped { get; } = [];

    /// <summary>Whether one more would have been significant and was not allowed.</summary>
    internal bool MoreToFind { get; private set; }

    internal static ResponseSelection Of(ResponseProblem problem, int mostModes, double falseAlarm, CancellationToken cancellation)
    {
        ResponseSelection selection = new(problem, falseAlarm, cancellation);
        while (selection.Extended() is { } extended)
        {
            selection.Orders.Add(extended.Poles);
            double significance = selection.Gain(selection.Model, extended) / selection._needed;
            if (significance < 1 || selection.Model.Poles.Length == mostModes)
            {
                selection.OneMore = extended;
                selection.MoreToFind = significance >= 1;
                if (significance < 1)
                {
                    selection.Dropped.Add((extended.Poles[^1], significance));
                }

                break;
            }

            selection.Model = extended;
        }

        selection.Prune();
        return selection;
    }

    /// <summary>What removing a pole would lose, over what is needed.</summary>
    internal double Significance(int index) =>
        ResponseModel.Fit(_problem, Without(index), _cancellation) is { } without ? Gain(without, Model) / _needed : 1;

    private ResponsePole[] Without(int index) => [.. Model.Poles.Where((_, m) => m != index)];

    private double Gain(ResponseModel less, ResponseModel more)
    {
        if (!(less.Sum > more.Sum))
        {
            return 0;
        }

        return _problem.Errors.Known
            ? (less.Sum - more.Sum) / _problem.Errors.Inflation
            : more.Freedom * Math.Log(less.Sum / more.Sum);
    }

    private ResponseModel? Extended()
    {
        if (Model.Freedom <= 4 || Model.Sum <= _problem.RoundingSum)
        {
            return null;
        }

        return Candidates()
            .Select(start => ResponseModel.Fit(_problem, [.. Model.Poles, start], _cancellation))
            .Where(fitted => fitted is not null)
            .MinBy(fitted => fitted!.Sum);
    }

    /// <summary>The places of largest gain, each the best of its own width.</summary>
    private IEnumerable<ResponsePole> Candidates()
    {
        double[] f = _problem.Frequencies;
        double spacing = (f[^1] - f[0]) / (f.Length - 1);
        List<(ResponsePole Pole, double Gain)> found = [];
        for (double width = spacing / 4; width < WidestStart * f[^1]; width *= Ladder)
        {
            _cancellation.ThrowIfCancellationRequested();
            (ResponsePole Pole, double Gain) best = default;
            for (double hertz = f[0] + (spacing / 2); hertz < f[^1]; hertz += Math.Max(spacing / 2, width / 2))
            {
                if (width < hertz * WidestStart)
                {
                    var pole = ResponsePole.At(hertz, width / hertz);
                    double gain = _problem.Gain(Model.Residual, pole);
                    best = gain > best.Gain ? (pole, gain) : best;
                }
            }

            if (best.Gain > 0)
            {
                found.Add(best);
            }
        }

        return found.OrderByDescending(candidate => candidate.Gain).Take(Starts).Select(candidate => candidate.Pole);
    }

    private void Prune()
    {
        for (int i = Model.Poles.Length - 1; i >= 0 && Model.Poles.Length > 1; i--)
        {
            if (ResponseModel.Fit(_problem, Without(i), _cancellation) is { } without && Gain(without, Model) < _needed)
            {
                Dropped.Add((Model.Poles[i], Gain(without, Model) / _needed));
                Model = without;
            }
        }
    }
}
