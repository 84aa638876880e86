namespace PrinterMath.Tension;

/// <summary>Robust weighted least squares of (f_n/n)² = f0² + f0²·B·n², and how far the partials stray from it.</summary>
/// <remarks>
/// Each partial's variance is (s·f_n)² + σ_n²: σ_n is what noise leaves, s the scatter of real partials about the stiff-string law. s has a half-Cauchy prior of
/// scale 0.08 % cut at 0.4 %, whose quartiles are those of 24 recorded strings (between 0.05 % and 0.15 %, median 0.08 %) and which lets s be as small as the residuals say. The answer
/// is the mean over s, its variance the mean variance plus that of the means, its degrees of freedom those of the t distribution with the kurtosis of that
/// mixture of normal distributions. Where the partials agree within their noise, see <see cref="CleanStringFit"/>, the answer is that of s = 0, and its difference from the mean joins the
/// uncertainty: an s that noise hides may still be there. B has a prior of 0 ± 0.001 and is never negative. Strays are weighed down as Huber says.
/// Source: Fletcher 1964, Normal vibration frequencies of a stiff piano string, J. Acoust. Soc. Am. 36, for the law; Gelman 2006, Prior distributions for
/// variance parameters in hierarchical models, Bayesian Analysis 1, for the prior; Huber 1964, Robust estimation of a location parameter, Annals of
/// Mathematical Statistics 35, for the weights (all from memory).
/// </remarks>
internal sealed class StiffStringFit
{
    private const double HuberBound = 1.5;
    private const int Rounds = 5;

    private StiffStringFit(StiffString model, double uF1, double uF0, double uB, double scatter, double degreesOfFreedom, double[] weights)
    {
        Model = model;
        FirstPartialUncertainty = uF1;
        F0Uncertainty = uF0;
        InharmonicityUncertainty = uB;
        Scatter = scatter;
        DegreesOfFreedom = degreesOfFreedom;
        Weights = weights;
    }

    internal StiffString Model { get; }

    /// <summary>Standard uncertainty of f0·√(1 + B) in Hz from noise and the scatter of the partials.</summary>
    internal double FirstPartialUncertainty { get; }

    internal double F0Uncertainty { get; }

    internal double InharmonicityUncertainty { get; }

    /// <summary>Relative scatter s of the partials, root of its mean square.</summary>
    internal double Scatter { get; }

    internal double DegreesOfFreedom { get; }

    /// <summary>Huber weights, 1 for partials that fit.</summary>
    internal double[] Weights { get; }

    internal static StiffStringFit Of(ReadOnlySpan<int> numbers, ReadOnlySpan<double> frequencies, ReadOnlySpan<double> noise)
    {
        double[] weights = new double[numbers.Length];
        bool[] kept = new bool[numbers.Length];
        StiffString? clean = CleanStringFit.Of(numbers, frequencies, noise, kept);
        for (int i = 0; i < weights.Length; i++)
        {
            weights[i] = clean is null || kept[i] ? 1 : 0;
        }

        ScatterMixture mixture = default;
        for (int round = 0; round < Rounds; round++)
        {
            mixture = ScatterMixture.Of(numbers, frequencies, noise, weights);
            Reweigh(numbers, frequencies, noise, mixture, weights);
        }

        StiffString model = clean ?? mixture.Model;
        return new StiffStringFit(
            model,
            Math.Sqrt(Square(mixture.FirstPartialUncertainty) + Square(mixture.Model.Partial(1) - model.Partial(1))),
            Math.Sqrt(Square(mixture.F0Uncertainty) + Square(mixture.Model.F0 - model.F0)),
            Math.Sqrt(Square(mixture.InharmonicityUncertainty) + Square(mixture.Model.B - model.B)),
            mixture.Scatter,
            mixture.DegreesOfFreedom,
            weights);
    }

    private static void Reweigh(ReadOnlySpan<int> numbers, ReadOnlySpan<double> frequencies, ReadOnlySpan<double> noise, ScatterMixture mixture, double[] weights)
    {
        for (int i = 0; i < weights.Length; i++)
        {
            double residual = (frequencies[i] / mixture.Model.Partial(numbers[i])) - 1, relative = noise[i] / frequencies[i];
            double z = Math.Abs(residual) / Math.Sqrt((mixture.Scatter * mixture.Scatter) + (relative * relative));
            weights[i] = weights[i] == 0 ? 0 : z > HuberBound ? HuberBound / z : 1;
        }
    }

    private static double Square(double x) => x * x;
}
