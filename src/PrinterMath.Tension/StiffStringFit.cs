namespace PrinterMath.Tension;

/// <summary>Robust weighted least squares of (f_n/n)² = f0² + f0²·B·n², and how far the partials stray from it.</summary>
/// <remarks>
/// Each partial's variance is (s·f_n)² + σ_n²: s, the scatter of real partials about the stiff-string law, is estimated from the residuals and
/// a prior of 0.06 % with 1.5 degrees of freedom, which decides when there are few partials; σ_n is what noise does to the peak. The prior is the scaled
/// inverse χ² whose median and quartiles are those of 24 recorded strings: s of 0.08 %, between 0.05 % and 0.15 %. B has a prior of 0 ± 0.001
/// and is never negative. Strays are weighed down as Huber says; for normal residuals the weighted mean square is 0.866 of the plain one.
/// Source: Fletcher 1964, Normal vibration frequencies of a stiff piano string, J. Acoust. Soc. Am. 36, for the law; Huber 1964, Robust estimation of a
/// location parameter, Annals of Mathematical Statistics 35, for the weights (from memory).
/// </remarks>
internal sealed class StiffStringFit
{
    private const double PriorScatter = 6e-4;
    private const double PriorDegreesOfFreedom = 1.5;
    private const double PriorInharmonicity = 1e-3;
    private const double HuberBound = 1.5;
    private const double HuberShrinkage = 0.866;
    private const int Rounds = 12;

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

    /// <summary>Standard uncertainty of f0·√(1 + B) in Hz from the scatter of the partials.</summary>
    internal double FirstPartialUncertainty { get; }

    internal double F0Uncertainty { get; }

    internal double InharmonicityUncertainty { get; }

    /// <summary>Relative scatter s of the partials.</summary>
    internal double Scatter { get; }

    internal double DegreesOfFreedom { get; }

    /// <summary>Huber weights, 1 for partials that fit.</summary>
    internal double[] Weights { get; }

    internal static StiffStringFit Of(ReadOnlySpan<int> numbers, ReadOnlySpan<double> frequencies, ReadOnlySpan<double> noise)
    {
        int m = numbers.Length;
        double scale = frequencies[0] * frequencies[0] / ((double)numbers[0] * numbers[0]);
        double[] weights = new double[m];
        Array.Fill(weights, 1);
        double scatter = PriorScatter;
        Normal normal = default;
        for (int round = 0; round < Rounds; round++)
        {
            normal = Normal.Solve(numbers, frequencies, noise, weights, scatter, scale);
            scatter = Reweigh(numbers, frequencies, noise, normal, scatter, weights);
        }

        double f0 = Math.Sqrt(normal.A * scale), b = normal.B / normal.A;
        double f1 = f0 * Math.Sqrt(1 + b);
        double half = scale / 2;
        return new StiffStringFit(
            new StiffString(f0, b),
            half / f1 * Math.Sqrt(Math.Max(0, normal.Caa + (2 * normal.Cab) + normal.Cbb)),
            half / f0 * Math.Sqrt(normal.Caa),
            Math.Sqrt(Math.Max(0, normal.Cbb - (2 * b * normal.Cab) + (b * b * normal.Caa))) / normal.A,
            scatter,
            PriorDegreesOfFreedom + Math.Max(0, m - 2),
            weights);
    }

    private static double Reweigh(ReadOnlySpan<int> numbers, ReadOnlySpan<double> frequencies, ReadOnlySpan<double> noise, Normal normal, double scatter, double[] weights)
    {
        double squares = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            double x = (double)numbers[i] * numbers[i];
            double residual = (frequencies[i] / (numbers[i] * Math.Sqrt(normal.Scale * (normal.A + (normal.B * x))))) - 1;
            double relativeNoise = noise[i] / frequencies[i];
            double spread = Math.Sqrt((scatter * scatter) + (relativeNoise * relativeNoise));
            double z = Math.Abs(residual) / spread;
            weights[i] = z > HuberBound ? HuberBound / z : 1;
            double share = scatter * scatter / (spread * spread);
            squares += (weights[i] * share * share * residual * residual / HuberShrinkage) + (share * relativeNoise * relativeNoise);
        }

        double free = Math.Max(0, weights.Length - 2);
        return Math.Sqrt(((PriorDegreesOfFreedom * PriorScatter * PriorScatter) + (squares * (free > 0 ? 1 : 0))) / (PriorDegreesOfFreedom + free));
    }

    /// <summary>Solution and covariance of the two-parameter normal equations, in units of the scale.</summary>
    private readonly record struct Normal(double A, double B, double Caa, double Cab, double Cbb, double Scale)
    {
        internal static Normal Solve(ReadOnlySpan<int> numbers, ReadOnlySpan<double> frequencies, ReadOnlySpan<double> noise, double[] weights, double scatter, double scale)
        {
            double s0 = 0, s1 = 0, s2 = 1 / (PriorInharmonicity * PriorInharmonicity), t0 = 0, t1 = 0;
            for (int i = 0; i < weights.Length; i++)
            {
                double x = (double)numbers[i] * numbers[i];
                double y = frequencies[i] * frequencies[i] / (x * scale);
                double relative = 4 * ((scatter * scatter) + (noise[i] * noise[i] / (frequencies[i] * frequencies[i])));
                double w = weights[i] / (y * y * relative);
                s0 += w;
                s1 += w * x;
                s2 += w * x * x;
                t0 += w * y;
                t1 += w * x * y;
            }

            double determinant = (s0 * s2) - (s1 * s1);
            double b = ((s0 * t1) - (s1 * t0)) / determinant;
            double a = b < 0 ? t0 / s0 : ((s2 * t0) - (s1 * t1)) / determinant;
            return new Normal(a, Math.Max(0, b), s2 / determinant, -s1 / determinant, s0 / determinant, scale);
        }
    }
}
