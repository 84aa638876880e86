using PrinterMath.Measurement;

namespace PrinterMath.Tension;

/// <summary>Both tensions as functions of one list of inputs, in which whatever the two spans share stands once.</summary>
internal sealed class PairModel
{
    private readonly List<BudgetInput> _inputs = [];
    private readonly InputCorrelation[] _correlations;
    private readonly SpanIndices _first;
    private readonly SpanIndices _second;

    internal PairModel(HeardSpan first, HeardSpan second, BeltComparisonOptions options)
    {
        bool sameDensity = options.SameBelt ?? first.Span.Density == second.Span.Density;
        if (sameDensity && first.Span.Density != second.Span.Density)
        {
            throw Guard.Refused(nameof(options), "SameBelt is true, but the two spans hold different linear densities.");
        }

        bool sameRigidity = sameDensity && first.Span.Rigidity == second.Span.Rigidity;
        bool sameEnds = options.SameEnds && first.Span.Ends == second.Span.Ends;
        (int density1, int density2) = Place(SpanInputs.Density, sameDensity, first, second, span => span.Density);
        (int rigidity1, int rigidity2) = Place(SpanInputs.Rigidity, sameRigidity, first, second, span => span.Rigidity);
        (int ends1, int ends2) = Place(SpanInputs.Ends, sameEnds, first, second, span => span.Fixity);
        (int length1, int length2) = Place(SpanInputs.Length, false, first, second, span => span.Length);
        (int heard1, int heard2) = (Add(SpanInputs.Frequency, first.Name, first.Frequency), Add(SpanInputs.Frequency, second.Name, second.Frequency));
        _first = new SpanIndices(length1, density1, rigidity1, ends1, heard1);
        _second = new SpanIndices(length2, density2, rigidity2, ends2, heard2);

        double r = Guard.Between(options.LengthCorrelation, -1, 1, nameof(options.LengthCorrelation));
        _correlations = r == 0 ? [] : [new InputCorrelation(_inputs[length1].Name, _inputs[length2].Name, r)];
    }

    internal UncertaintyBudget<T> Propagate<T>(Func<double, double, double> ofTensions)
        where T : struct =>
        Propagation.FirstOrder<T>(x => ofTensions(_first.Newtons(x), _second.Newtons(x)), _inputs, _correlations);

    internal IReadOnlyList<BudgetInput> Inputs => _inputs;

    internal IReadOnlyList<InputCorrelation> Correlations => _correlations;

    internal (double First, double Second) Newtons(ReadOnlySpan<double> x) => (_first.Newtons(x), _second.Newtons(x));

    /// <summary>Tensions of the same spans at other frequencies.</summary>
    internal (double First, double Second) Newtons(ReadOnlySpan<double> x, double first, double second) => (_first.Newtons(x, first), _second.Newtons(x, second));

    private (int First, int Second) Place<T>(string input, bool shared, HeardSpan first, HeardSpan second, Func<BeltSpan, Measured<T>> read)
        where T : struct
    {
        int index = Add(input, shared ? null : first.Name, read(first.Span));
        return (index, shared ? index : Add(input, second.Name, read(second.Span)));
    }

    private int Add<T>(string input, string? belt, Measured<T> measured)
        where T : struct
    {
        _inputs.Add(BudgetInput.Of(belt is null ? input : $"{input} {belt}", measured));
        return _inputs.Count - 1;
    }

    private readonly record struct SpanIndices(int Length, int Density, int Rigidity, int Ends, int Heard)
    {
        internal double Newtons(ReadOnlySpan<double> x) => Newtons(x, x[Heard]);

        internal double Newtons(ReadOnlySpan<double> x, double hertz) => SpanModel.Newtons(hertz, x[Length], x[Density], x[Rigidity], x[Ends], 1);
    }
}
