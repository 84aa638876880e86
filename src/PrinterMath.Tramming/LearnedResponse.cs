namespace PrinterMath.Tramming;

/// <summary>Posterior of the response: Mean[at·K + of] is the move at one screw for a turn of another, in metres, with the covariance of all of them.</summary>
internal sealed record LearnedResponse(int Screws, double[] Mean, double[] Covariance)
{
    internal double Variance(int at, int of)
    {
        int index = (at * Screws) + of;
        return Covariance[(index * Mean.Length) + index];
    }

    /// <summary>Covariance of the moves at the screws that given turns make: Σ tₖtₗ·cov(Rᵢₖ, Rⱼₗ).</summary>
    internal double[] MoveCovariance(ReadOnlySpan<double> turns)
    {
        double[] result = new double[Screws * Screws];
        for (int i = 0; i < Mean.Length; i++)
        {
            for (int j = 0; j < Mean.Length; j++)
            {
                result[(i / Screws * Screws) + (j / Screws)] += turns[i % Screws] * turns[j % Screws] * Covariance[(i * Mean.Length) + j];
            }
        }

        return result;
    }
}
