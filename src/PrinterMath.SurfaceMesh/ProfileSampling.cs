namespace PrinterMath.SurfaceMesh;

/// <summary>
/// Stretches of a height that is no polynomial: halved until a polynomial of degree six predicts the heights between its samples to a share of the tolerance, and twice
/// what it was found to be off by is added. An estimate, not a bound.
/// </summary>
internal sealed class ProfileSampling(ProfileLine line, double tolerance, List<ProfileStretch> stretches)
{
    private const int LeastStretches = 8;
    private const int MostHalvings = 16;
    private const double Share = 1.0 / 256;

    internal void Sample(double from, double to)
    {
        for (int i = 0; i < LeastStretches; i++)
        {
            Sample(from + ((to - from) * i / LeastStretches), i + 1 == LeastStretches ? to : from + ((to - from) * (i + 1) / LeastStretches), 0);
        }
    }

    private void Sample(double from, double to, int halvings)
    {
        if (stretches.Count > FollowedMove.MostSegments)
        {
            throw Guard.Out("maximumDeviation", tolerance, "large enough for the height of this model to be sampled, in metres");
        }

        const int Degree = BernsteinForm.LargestDegree;
        double[] coefficients = line.Sampled(from, to, Degree);
        double off = 0;
        for (int k = 0; k < Degree; k++)
        {
            double u = (BernsteinForm.Place(k, Degree) + BernsteinForm.Place(k + 1, Degree)) / 2;
            off = Math.Max(off, Math.Abs(BernsteinForm.Value(coefficients, u) - line.Height(from + ((to - from) * u))));
        }

        if (2 * off <= Share * tolerance || halvings == MostHalvings)
        {
            stretches.Add(new ProfileStretch(from, to, coefficients, 2 * off));
            return;
        }

        double middle = from + ((to - from) / 2);
        Sample(from, middle, halvings + 1);
        Sample(middle, to, halvings + 1);
    }
}
