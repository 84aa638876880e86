namespace PrinterMath.Tramming;

/// <summary>
/// Maximum likelihood of P(touching) = 1/(1 + e^−η), η = b₀ + b₁x with x the height in units of its scatter about its mean: Newton's steps with the
/// expected information, halved until the likelihood does not fall. Data must overlap.
/// </summary>
internal static class LogisticFit
{
    private const int MostIterations = 200;

    /// <summary>The fit that leaves out trials whose flag is set; b₁ of either sign, reported as a signed spread s = −scale/b₁.</summary>
    internal static LogisticSolution Of(ReadOnlySpan<ContactTrial> trials, int left = -1)
    {
        double mean = 0, square = 0;
        foreach (ContactTrial trial in trials)
        {
            mean += trial.HeightMeters / trials.Length;
        }

        foreach (ContactTrial trial in trials)
        {
            square += (trial.HeightMeters - mean) * (trial.HeightMeters - mean) / trials.Length;
        }

        double scale = Math.Sqrt(square);
        double b0 = 0, b1 = 0, likelihood = LogLikelihood(trials, left, mean, scale, b0, b1);
        (double g0, double g1, double i00, double i01, double i11) = Derivatives(trials, left, mean, scale, b0, b1);
        for (int iteration = 0; iteration < MostIterations; iteration++)
        {
            double determinant = (i00 * i11) - (i01 * i01);
            double d0 = ((i11 * g0) - (i01 * g1)) / determinant;
            double d1 = ((i00 * g1) - (i01 * g0)) / determinant;
            double next = LogLikelihood(trials, left, mean, scale, b0 + d0, b1 + d1);
            for (int halving = 0; halving < 40 && !(next >= likelihood); halving++)
            {
                d0 /= 2;
                d1 /= 2;
                next = LogLikelihood(trials, left, mean, scale, b0 + d0, b1 + d1);
            }

            if (!(next >= likelihood))
            {
                break;
            }

            b0 += d0;
            b1 += d1;
            likelihood = next;
            (g0, g1, i00, i01, i11) = Derivatives(trials, left, mean, scale, b0, b1);
            if (Math.Abs(d0) <= 1e-10 * (1 + Math.Abs(b0)) && Math.Abs(d1) <= 1e-10 * (1 + Math.Abs(b1)))
            {
                break;
            }
        }

        return Report(mean, scale, b0, b1, i00, i01, i11, likelihood);
    }

    /// <summary>µ = mean − scale·b₀/b₁ and s = −scale/b₁ with the inverse information carried through their derivatives.</summary>
    private static LogisticSolution Report(double mean, double scale, double b0, double b1, double i00, double i01, double i11, double likelihood)
    {
        double determinant = (i00 * i11) - (i01 * i01);
        double v00 = i11 / determinant, v01 = -i01 / determinant, v11 = i00 / determinant;
        double m0 = -scale / b1, m1 = scale * b0 / (b1 * b1), s1 = scale / (b1 * b1);
        return new LogisticSolution(
            mean - (scale * b0 / b1),
            -scale / b1,
            (m0 * m0 * v00) + (2 * m0 * m1 * v01) + (m1 * m1 * v11),
            s1 * s1 * v11,
            s1 * ((m0 * v01) + (m1 * v11)),
            likelihood,
            Math.Max(1, (4 * i00) - 2));
    }

    private static double LogLikelihood(ReadOnlySpan<ContactTrial> trials, int left, double mean, double scale, double b0, double b1)
    {
        double sum = 0;
        for (int i = 0; i < trials.Length; i++)
        {
            double eta = b0 + (b1 * (trials[i].HeightMeters - mean) / scale);
            double against = trials[i].Touches ? -eta : eta;
            sum -= i == left ? 0 : Math.Max(0, against) + Math.Log(1 + Math.Exp(-Math.Abs(against)));
        }

        return sum;
    }

    private static (double G0, double G1, double I00, double I01, double I11) Derivatives(
        ReadOnlySpan<ContactTrial> trials, int left, double mean, double scale, double b0, double b1)
    {
        double g0 = 0, g1 = 0, i00 = 0, i01 = 0, i11 = 0;
        for (int i = 0; i < trials.Length; i++)
        {
            if (i == left)
            {
                continue;
            }

            double x = (trials[i].HeightMeters - mean) / scale;
            double p = 1 / (1 + Math.Exp(-b0 - (b1 * x)));
            double rest = (trials[i].Touches ? 1 : 0) - p;
            double w = p * (1 - p);
            g0 += rest;
            g1 += rest * x;
            i00 += w;
            i01 += w * x;
            i11 += w * x * x;
        }

        return (g0, g1, i00, i01, i11);
    }
}
