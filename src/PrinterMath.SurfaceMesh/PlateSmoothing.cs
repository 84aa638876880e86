namespace PrinterMath.SurfaceMesh;

/// <summary>The smoothing of least generalised cross-validation, V(δ) = n·|(I − A)z|²/tr²(I − A) = n·|(B + δ)⁻¹g|²/tr²(B + δ)⁻¹.</summary>
/// <remarks>Source: P. Craven, G. Wahba 1979, Numer. Math. 31, 377-403; G. H. Golub, M. Heath, G. Wahba 1979, Technometrics 21, 215-223 (both from memory).</remarks>
internal static class PlateSmoothing
{
    private const double Lowest = 1e-10;
    private const double Highest = 1e6;
    private const int PerDecade = 5;
    private const double Finest = 1e-4;

    /// <summary>The best δ, and whether it is the largest tried: a plane.</summary>
    internal static (double Delta, bool IsPlane) Best(PlateSystem system, CancellationToken cancellation)
    {
        double mean = system.MeanStiffness;
        var form = TridiagonalForm.Of(system.Bending, system.Loads, cancellation);
        double Value(double log)
        {
            (double trace, double squares) = form.At(mean * Math.Exp(log));
            return squares / (trace * trace);
        }

        double low = Math.Log(Lowest), high = Math.Log(Highest), step = Math.Log(10) / PerDecade, best = high;
        for (double log = low; log < high + (step / 2); log += step)
        {
            best = Value(log) < Value(best) ? log : best;
        }

        double from = best - step, to = best + step;
        double golden = (Math.Sqrt(5) - 1) / 2;
        while (to - from > Finest)
        {
            double left = to - (golden * (to - from)), right = from + (golden * (to - from));
            (from, to) = Value(left) <= Value(right) ? (from, right) : (left, to);
        }

        return (mean * Math.Exp((from + to) / 2), best > high - (step / 2));
    }
}
