namespace PrinterMath.Tramming;

/// <summary>
/// A measure that is the largest of linear functions of the residuals, so that T(e + k·s) is piecewise linear in k. Newton's method comes to the root from above after its first step and ends when it stands on
/// the piece that crosses: Ortega, Rheinboldt 1970, Iterative Solution of Nonlinear Equations in Several Variables, 13.3 (monotone convergence on convex functions, from memory).
/// </summary>
internal abstract class ConvexMeasure : FlatnessMeasure
{
    private const int MostSteps = 60;

    internal sealed override double SizeAt(double[] noise, double alone, double[] shape, double value, double start, double resolution)
    {
        double most = value + alone;
        double size = start > 0 && start < most ? start : most;
        for (int step = 0; step < MostSteps; step++)
        {
            (double here, double slope) = Along(noise, shape, size);
            double excess = here - value;
            if (Math.Abs(excess) <= resolution || (excess > 0 && slope <= 0))
            {
                break;
            }

            size = excess < 0 && slope * (most - size) <= -excess ? most : size - (excess / slope);
        }

        return size;
    }

    /// <summary>T(e + k·s), and a slope of it in k.</summary>
    private protected abstract (double Value, double Slope) Along(double[] noise, double[] shape, double size);
}
