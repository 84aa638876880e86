using MathNet.Numerics.Distributions;

namespace PrinterMath.Tension;

/// <summary>The stiff string through partials that stray from it by nothing but their noise, those left out that are no partials of it: a peak of noise, a line of hum.</summary>
/// <remarks>
/// Least squares of (f_n/n)² = f0² + f0²·B·n² with B of prior 0 ± 0.001, not negative. While the squares are larger than noise leaves in 99 of 100, the partial is left out without which they are smallest; a far
/// one pulls the line to itself, so that its own residual would not betray it. At most a quarter of them, and four stay.
/// </remarks>
internal static class CleanStringFit
{
    private const double Probability = 0.99;
    private const double PriorInharmonicity = 1e-3;
    private const int LeastKept = 4;

    /// <summary>Which partials are kept, when those agree within their noise.</summary>
    /// <returns>The string, or null when the partials stray from the law by more than their noise, whichever few are left out.</returns>
    internal static StiffString? Of(ReadOnlySpan<int> numbers, ReadOnlySpan<double> frequencies, ReadOnlySpan<double> noise, Span<bool> kept)
    {
        kept.Fill(true);
        double scale = frequencies[0] * frequencies[0] / ((double)numbers[0] * numbers[0]);
        Span<Term> terms = stackalloc Term[numbers.Length];
        Sums sums = new() { XX = 1 / (PriorInharmonicity * PriorInharmonicity) };
        for (int i = 0; i < terms.Length; i++)
        {
            terms[i] = Term.Of(numbers[i], frequencies[i], noise[i], scale);
            sums = sums.With(terms[i], 1);
        }

        for (int left = numbers.Length; ; left--)
        {
            if (left >= 2 && sums.Surplus() <= ChiSquared.InvCDF(Math.Max(1, left - 2), Probability))
            {
                (double a, double b) = sums.Line();
                return new StiffString(Math.Sqrt(a * scale), b / a);
            }

            if (left <= LeastKept || numbers.Length - left >= numbers.Length / 4)
            {
                return null;
            }

            int worst = Worst(terms, sums, kept);
            kept[worst] = false;
            sums = sums.With(terms[worst], -1);
        }
    }

    private static int Worst(ReadOnlySpan<Term> terms, Sums sums, ReadOnlySpan<bool> kept)
    {
        int worst = 0;
        double least = double.PositiveInfinity;
        for (int i = 0; i < terms.Length; i++)
        {
            double surplus = kept[i] ? sums.With(terms[i], -1).Surplus() : double.PositiveInfinity;
            (worst, least) = surplus < least ? (i, surplus) : (worst, least);
        }

        return worst;
    }

    /// <summary>n², (f_n/n)² over the scale less one, so that little is lost by cancellation, and its weight.</summary>
    private readonly record struct Term(double X, double Y, double Weight)
    {
        internal static Term Of(int number, double frequency, double noise, double scale)
        {
            double x = (double)number * number, y = frequency * frequency / (x * scale), relative = 2 * noise / frequency;
            return new Term(x, y - 1, 1 / (y * y * relative * relative));
        }
    }

    private readonly record struct Sums(double W, double X, double XX, double Y, double XY, double YY)
    {
        internal Sums With(Term term, double sign)
        {
            double w = sign * term.Weight;
            return new Sums(
                W + w, X + (w * term.X), XX + (w * term.X * term.X), Y + (w * term.Y), XY + (w * term.X * term.Y), YY + (w * term.Y * term.Y));
        }

        internal (double A, double B) Line()
        {
            double b = Math.Max(0, ((W * XY) - (X * Y)) / ((W * XX) - (X * X)));
            return (1 + ((Y - (X * b)) / W), b);
        }

        internal double Surplus()
        {
            (double a, double b) = Line();
            double ofA = a - 1;
            return YY - (2 * ofA * Y) - (2 * b * XY) + (ofA * ofA * W) + (2 * ofA * b * X) + (b * b * XX);
        }
    }
}
