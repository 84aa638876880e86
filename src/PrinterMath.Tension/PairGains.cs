using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>The gains of a pair as functions of one list of inputs: those of the pair, then those that the gains were learned from.</summary>
internal sealed class PairGains
{
    private readonly BeltSpan _spanA;
    private readonly BeltSpan _spanB;
    private readonly PairReading[] _readings;
    private readonly BudgetInput[] _own;

    internal PairGains(BeltSpan spanA, BeltSpan spanB, IReadOnlyList<PairReading> readings, TensionerOptions options)
    {
        _spanA = spanA;
        _spanB = spanB;
        Options = options;
        _readings = [.. readings];
        _own = [.. _readings.SelectMany((reading, i) => new[]
        {
            BudgetInput.Of(FormattableString.Invariant($"frequency A of reading {i + 1}"), reading.FrequencyA),
            BudgetInput.Of(FormattableString.Invariant($"frequency B of reading {i + 1}"), reading.FrequencyB),
            BudgetInput.Of(FormattableString.Invariant($"turns A of reading {i + 1}"), reading.TurnsA),
            BudgetInput.Of(FormattableString.Invariant($"turns B of reading {i + 1}"), reading.TurnsB),
        })];
    }

    internal PairGains(BeltSpan spanA, BeltSpan spanB, Measured<Force> gainA, Measured<Force> gainB, TensionerOptions options)
    {
        _spanA = spanA;
        _spanB = spanB;
        Options = options;
        _readings = [];
        _own = [BudgetInput.Of("gain A", gainA), BudgetInput.Of("gain B", gainB)];
    }

    /// <summary>A model of all inputs: tensions now and gains.</summary>
    internal delegate double Combination((double A, double B) tensions, GainMatrix gains);

    internal TensionerOptions Options { get; }

    internal PairReading? Last => _readings.Length > 0 ? _readings[^1] : null;

    internal double Likeness => new TurnPlane([.. _readings.Select(r => r.TurnsA.SiValue)], [.. _readings.Select(r => r.TurnsB.SiValue)]).Likeness;

    internal HeardSpan HeardA(Measured<Frequency> heard) => new("A", _spanA, heard);

    internal HeardSpan HeardB(Measured<Frequency> heard) => new("B", _spanB, heard);

    internal PairModel Model(Measured<Frequency> heardA, Measured<Frequency> heardB) => new(HeardA(heardA), HeardB(heardB), new BeltComparisonOptions());

    /// <summary>Propagates all inputs; when what is heard now is the last reading, it stands once.</summary>
    internal UncertaintyBudget<T> Propagate<T>(PairModel model, bool nowIsLast, Combination combine, params BudgetInput[] more)
        where T : struct =>
        Propagation.FirstOrder<T>(x => combine(model.Newtons(x), Matrix(model, nowIsLast, x)), Inputs(model, nowIsLast, more), model.Correlations);

    /// <summary>As <see cref="Propagate{T}(PairModel, bool, Combination, BudgetInput[])"/>, with the errors of both turns as the last two inputs.</summary>
    internal UncertaintyBudget<T> AfterTurns<T>(PairModel model, bool nowIsLast, double turnsA, double turnsB, Func<double, double, double> combine)
        where T : struct
    {
        double u = Options.TurnStandardUncertainty;
        return Propagation.FirstOrder<T>(
            x =>
            {
                (double a, double b) = model.Newtons(x);
                (double moreA, double moreB) = Matrix(model, nowIsLast, x).Times(turnsA + x[^2], turnsB + x[^1]);
                return combine(a + moreA, b + moreB);
            },
            Inputs(model, nowIsLast, Made("turn made on A", turnsA), Made("turn made on B", turnsB)),
            model.Correlations);

        BudgetInput Made(string name, double turns) => BudgetInput.Of(name, Measured<double>.FromSi(0, turns == 0 ? 0 : u));
    }

    internal JointEstimate Joint(PairModel model) => Propagation.FirstOrder(
        [
            new JointOutput("gain AA", "N", x => Matrix(model, true, x).AA), new JointOutput("gain AB", "N", x => Matrix(model, true, x).AB),
            new JointOutput("gain BA", "N", x => Matrix(model, true, x).BA), new JointOutput("gain BB", "N", x => Matrix(model, true, x).BB),
        ],
        Inputs(model, true),
        model.Correlations);

    /// <summary>Departure from the planes in units of what the frequency alone leaves uncertain, u(T) = 2·T·u(f)/f.</summary>
    internal double LargestResidual(PairModel model)
    {
        double[] x = [.. Inputs(model, true).Select(input => input.SiValue)];
        (TurnPlane plane, double[] a, double[] b) = Planes(model, true, x);
        return Math.Max(
            plane.LargestResidual(a, [.. _readings.Select((r, i) => 2 * a[i] * r.FrequencyA.RelativeStandardUncertainty)]),
            plane.LargestResidual(b, [.. _readings.Select((r, i) => 2 * b[i] * r.FrequencyB.RelativeStandardUncertainty)]));
    }

    private List<BudgetInput> Inputs(PairModel model, bool nowIsLast, params BudgetInput[] more)
    {
        int skip = _readings.Length - 1;
        IEnumerable<BudgetInput> own = nowIsLast && _readings.Length > 0
            ? _own.Where((_, i) => i / 4 != skip || i % 4 >= 2)
            : _own;
        return [.. model.Inputs, .. own, .. more];
    }

    private GainMatrix Matrix(PairModel model, bool nowIsLast, ReadOnlySpan<double> x)
    {
        int at = model.Inputs.Count;
        if (_readings.Length == 0)
        {
            return new GainMatrix(x[at], 0, 0, x[at + 1]);
        }

        (TurnPlane plane, double[] a, double[] b) = Planes(model, nowIsLast, x);
        return plane.Gains(a, b);
    }

    private (TurnPlane Plane, double[] TensionsA, double[] TensionsB) Planes(PairModel model, bool nowIsLast, ReadOnlySpan<double> x)
    {
        int count = _readings.Length;
        int at = model.Inputs.Count;
        double[] tensionsA = new double[count];
        double[] tensionsB = new double[count];
        double[] turnsA = new double[count];
        double[] turnsB = new double[count];
        for (int i = 0; i < count; i++)
        {
            bool now = nowIsLast && i == count - 1;
            (tensionsA[i], tensionsB[i]) = now ? model.Newtons(x) : model.Newtons(x, x[at], x[at + 1]);
            at += now ? 0 : 2;
            turnsA[i] = x[at];
            turnsB[i] = x[at + 1];
            at += 2;
        }

        return (new TurnPlane(turnsA, turnsB), tensionsA, tensionsB);
    }
}
