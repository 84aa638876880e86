namespace PrinterMath.Tension;

/// <summary>Stiff strings fitted under every scatter of the partials, each as likely as the partials make it.</summary>
internal readonly struct ScatterMixture
{
    private const double PriorScale = 8e-4;
    private const double Least = 1e-5;
    private const double Most = 4e-3;
    private const int Places = 13;
    private const double PriorInharmonicity = 1e-3;

    private ScatterMixture(StiffString model, double uF1, double uF0, double uB, double scatter, double degreesOfFreedom)
    {
        Model = model;
        FirstPartialUncertainty = uF1;
        F0Uncertainty = uF0;
        InharmonicityUncertainty = uB;
        Scatter = scatter;
        DegreesOfFreedom = degreesOfFreedom;
    }

    internal StiffString Model { get; }

    internal double FirstPartialUncertainty { get; }

    internal double F0Uncertainty { get; }

    internal double InharmonicityUncertainty { get; }

    internal double Scatter { get; }

    internal double DegreesOfFreedom { get; }

    /// <summary>Means over the posterior of the scatter; its places are spaced evenly in logarithm.</summary>
    internal static ScatterMixture Of(ReadOnlySpan<int> numbers, ReadOnlySpan<double> frequencies, ReadOnlySpan<double> noise, ReadOnlySpan<double> weights)
    {
        double scale = frequencies[0] * frequencies[0] / ((double)numbers[0] * numbers[0]), best = double.NegativeInfinity;
        Span<Line> lines = stackalloc Line[Places];
        Span<double> odds = stackalloc double[Places];
        for (int k = 0; k < Places; k++)
        {
            double s = Least * Math.Pow(Most / Least, k / (Places - 1.0));
            lines[k] = Line.Through(numbers, frequencies, noise, weights, s, scale);
            odds[k] = lines[k].LogLikelihood + Math.Log(s / (1 + (s * s / (PriorScale * PriorScale))));
            best = Math.Max(best, odds[k]);
        }

        double sum = 0, a = 0, b = 0, scatter = 0;
        for (int k = 0; k < Places; k++)
        {
            double s = Least * Math.Pow(Most / Least, k / (Places - 1.0));
            odds[k] = Math.Exp(odds[k] - best);
            sum += odds[k];
            a += odds[k] * lines[k].A;
            b += odds[k] * lines[k].B;
            scatter += odds[k] * s * s;
        }

        a /= sum;
        b /= sum;
        double vF1 = 0, vSquared = 0, vA = 0, vRatio = 0, ratio = b / a;
        for (int k = 0; k < Places; k++)
        {
            Line line = lines[k];
            double share = odds[k] / sum, ofA = line.A - a, ofB = line.B - b;
            double v = Math.Max(0, line.Caa + (2 * line.Cab) + line.Cbb) + ((ofA + ofB) * (ofA + ofB));
            vF1 += share * v;
            vSquared += share * v * v;
            vA += share * (line.Caa + (ofA * ofA));
            vRatio += share * (Math.Max(0, line.Cbb - (2 * ratio * line.Cab) + (ratio * ratio * line.Caa)) + Math.Pow(ofB - (ratio * ofA), 2));
        }

        double f0 = Math.Sqrt(a * scale), f1 = f0 * Math.Sqrt(1 + ratio), excess = (vSquared / (vF1 * vF1)) - 1;
        return new ScatterMixture(
            new StiffString(f0, ratio),
            scale / 2 / f1 * Math.Sqrt(vF1),
            scale / 2 / f0 * Math.Sqrt(vA),
            Math.Sqrt(vRatio) / a,
            Math.Sqrt(scatter / sum),
            4 + (2 / Math.Max(excess, 1e-6)));
    }

    /// <summary>Solution and covariance of the two-parameter normal equations, in units of the scale, for one scatter.</summary>
    private readonly record struct Line(double A, double B, double Caa, double Cab, double Cbb, double LogLikelihood)
    {
        internal static Line Through(ReadOnlySpan<int> numbers, ReadOnlySpan<double> frequencies, ReadOnlySpan<double> noise, ReadOnlySpan<double> weights, double scatter, double scale)
        {
            double s0 = 0, s1 = 0, s2 = 1 / (PriorInharmonicity * PriorInharmonicity), t0 = 0, t1 = 0, squares = 0, product = 1, logs = 0;
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
                squares += w * (y - 1) * (y - 1);
                product *= relative;
                if (product is < 1e-200 or > 1e200)
                {
                    logs += Math.Log(product);
                    product = 1;
                }
            }

            double determinant = (s0 * s2) - (s1 * s1);
            double b = Math.Max(0, ((s0 * t1) - (s1 * t0)) / determinant);
            double a = (t0 - (s1 * b)) / s0;

            // Residuals about y = 1, so that little is lost by cancellation.
            double ofA = a - 1, left = squares - (2 * ofA * (t0 - s0)) - (2 * b * (t1 - s1)) + (ofA * ofA * s0) + (2 * ofA * b * s1) + (b * b * s2);
            return new Line(a, b, s2 / determinant, -s1 / determinant, s0 / determinant, -((left + logs + Math.Log(product) + Math.Log(determinant)) / 2));
        }
    }
}
