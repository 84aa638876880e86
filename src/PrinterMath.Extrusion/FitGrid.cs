using System.Runtime.Intrinsics;
using MathNet.Numerics.Distributions;

namespace PrinterMath.Extrusion;

/// <summary>The grid of 50 % flow µ and transition σ on which a fit series is judged, with the prior and P(fits) = Φ((µ − x)/σ).</summary>
internal sealed class FitGrid
{
    private const int TransitionCount = 16;
    private const int FlowIntervals = 200;

    /// <summary>µ may lie this part of the bracket outside it, so that a bracket chosen wrongly shows.</summary>
    private const double Margin = 0.25;
    private const double SharpestTransition = 0.01, WidestTransition = 0.5;

    /// <summary>Density of ln σ goes with this power of σ: between none known of its order of magnitude (0) and none of its size (1).</summary>
    private const double TransitionPower = 0.25;

    /// <summary>Weights below this count as zero; smaller ones would run into numbers that processors handle slowly.</summary>
    private const double Negligible = 1e-200;

    private readonly double[] _probability;
    private readonly double[] _opposite;
    private readonly int _stride;
    private readonly int _offset;
    private readonly int _perStep;
    private readonly long _firstStep;

    internal FitGrid(double lower, double upper, double step)
    {
        Step = step;
        double bracket = upper - lower;
        _perStep = Math.Max(1, (int)Math.Ceiling(FlowIntervals * step / bracket));
        Spacing = step / _perStep;
        int margin = (int)Math.Ceiling(Margin * bracket / Spacing);
        _firstStep = (long)Math.Ceiling((lower / step) - 1e-6);
        Candidates = (int)((long)Math.Floor((upper / step) + 1e-6) - _firstStep) + 1;
        int inside = ((Candidates - 1) * _perStep) + 1;
        Flows = new double[inside + (2 * margin)];
        for (int j = 0; j < Flows.Length; j++)
        {
            Flows[j] = Flow(0) + ((j - margin) * Spacing);
        }

        Transitions = new double[TransitionCount];
        for (int s = 0; s < TransitionCount; s++)
        {
            double part = s / (TransitionCount - 1.0);
            Transitions[s] = bracket * SharpestTransition * Math.Pow(WidestTransition / SharpestTransition, part);
        }

        // P depends on µ − x alone, so one row for each σ serves all flows on the grid.
        _offset = inside - 1 + margin;
        _stride = (2 * _offset) + 1;
        _probability = new double[TransitionCount * _stride];
        _opposite = new double[TransitionCount * _stride];
        for (int s = 0; s < TransitionCount; s++)
        {
            for (int d = 0; d < _stride; d++)
            {
                _probability[(s * _stride) + d] = Normal.CDF(0, 1, (d - _offset) * Spacing / Transitions[s]);
                _opposite[((s + 1) * _stride) - 1 - d] = _probability[(s * _stride) + d];
            }
        }

        MarginCells = margin;
    }

    internal double Step { get; }

    /// <summary>Distance of neighbouring µ.</summary>
    internal double Spacing { get; }

    internal double[] Flows { get; }

    internal double[] Transitions { get; }

    /// <summary>Number of flows within the bracket that can be set.</summary>
    internal int Candidates { get; }

    private int MarginCells { get; }

    /// <summary>Flow of a candidate, a multiple of the step.</summary>
    internal double Flow(int candidate) => Math.Round((_firstStep + candidate) * Step, 12);

    /// <summary>Uniform in µ, density of ln σ ∝ σ^¼.</summary>
    internal double[] Prior()
    {
        double[] prior = new double[Transitions.Length * Flows.Length];
        double sum = Transitions.Sum(sigma => Math.Pow(sigma, TransitionPower)) * Flows.Length;
        for (int s = 0; s < Transitions.Length; s++)
        {
            prior.AsSpan(s * Flows.Length, Flows.Length).Fill(Math.Pow(Transitions[s], TransitionPower) / sum);
        }

        return prior;
    }

    /// <summary>P(fits) of a candidate for one σ and each µ.</summary>
    internal ReadOnlySpan<double> Probability(int candidate, int transition) =>
        _probability.AsSpan((transition * _stride) + _offset - MarginCells - (candidate * _perStep), Flows.Length);

    /// <summary>Multiplies by the probability of an answer.</summary>
    /// <param name="weights">Weights before the answer, whose sum is one once they are scaled.</param>
    /// <param name="scale">What to scale them by, which saves a second way through the grid.</param>
    /// <param name="flow">Where the pieces were tried.</param>
    /// <param name="fits">The answer.</param>
    /// <param name="updated">Weights after it, not scaled; may be the same memory.</param>
    /// <returns>Sum of the weights: probability of the answer before it was seen.</returns>
    internal double Update(ReadOnlySpan<double> weights, double scale, double flow, bool fits, Span<double> updated)
    {
        double cells = (flow - Flows[0]) / Spacing, nearest = Math.Round(cells);
        bool onGrid = Math.Abs(cells - nearest) < 1e-6 && nearest >= MarginCells && nearest < Flows.Length - MarginCells;
        double[] between = onGrid ? [] : new double[Flows.Length];
        double sum = 0;
        for (int s = 0; s < Transitions.Length; s++)
        {
            int row = s * Flows.Length;
            ReadOnlySpan<double> probability = onGrid
                ? (fits ? _probability : _opposite).AsSpan((s * _stride) + _offset - (int)nearest, Flows.Length)
                : Between(flow, fits ? Transitions[s] : -Transitions[s], between);
            sum += Multiply(weights.Slice(row, Flows.Length), scale, probability, updated.Slice(row, Flows.Length));
        }

        return sum;
    }

    private double[] Between(double flow, double sigma, double[] probability)
    {
        for (int j = 0; j < probability.Length; j++)
        {
            probability[j] = Normal.CDF(0, 1, (Flows[j] - flow) / sigma);
        }

        return probability;
    }

    private static double Multiply(ReadOnlySpan<double> weights, double scale, ReadOnlySpan<double> probability, Span<double> products)
    {
        Vector512<double> sums = default;
        var scales = Vector512.Create(scale);
        int i = 0;
        for (; i <= products.Length - Vector512<double>.Count; i += Vector512<double>.Count)
        {
            Vector512<double> product = Vector512.Create(weights[i..]) * scales * Vector512.Create(probability[i..]);
            product = Vector512.ConditionalSelect(Vector512.LessThan(product, Vector512.Create(Negligible)), default, product);
            product.CopyTo(products[i..]);
            sums += product;
        }

        double sum = Vector512.Sum(sums);
        for (; i < products.Length; i++)
        {
            double product = weights[i] * scale * probability[i];
            products[i] = product < Negligible ? 0 : product;
            sum += products[i];
        }

        return sum;
    }
}
