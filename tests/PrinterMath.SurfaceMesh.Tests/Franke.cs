namespace PrinterMath.SurfaceMesh.Tests;

/// <summary>
/// Franke 1979, A critical comparison of some methods for interpolation of scattered data, NPS-53-79-003, F1 in the form with (9y + 1)/10 not squared, on the unit square.
/// </summary>
internal static class Franke
{
    internal static double At(double x, double y) =>
        (0.75 * Math.Exp(-((((9 * x) - 2) * ((9 * x) - 2)) + (((9 * y) - 2) * ((9 * y) - 2))) / 4))
        + (0.75 * Math.Exp((-((9 * x) + 1) * ((9 * x) + 1) / 49) - (((9 * y) + 1) / 10)))
        + (0.5 * Math.Exp(-((((9 * x) - 7) * ((9 * x) - 7)) + (((9 * y) - 3) * ((9 * y) - 3))) / 4))
        - (0.2 * Math.Exp(-(((9 * x) - 4) * ((9 * x) - 4)) - (((9 * y) - 7) * ((9 * y) - 7))));

    internal static ProbedGrid Sampled(int nodes)
    {
        double[] axis = [.. Enumerable.Range(0, nodes).Select(i => i / (nodes - 1.0))];
        return ProbedGrid.FromHeights(axis, axis, [.. from y in axis from x in axis select At(x, y)]);
    }

    /// <summary>Errors at 401 by 401 places.</summary>
    internal static (double Largest, double Root) Errors(IHeightModel model)
    {
        const int Side = 401;
        double[] xs = new double[Side * Side], ys = new double[Side * Side], zs = new double[Side * Side];
        for (int k = 0; k < xs.Length; k++)
        {
            xs[k] = (k % Side) / (Side - 1.0);
            ys[k] = (k / Side) / (Side - 1.0);
        }

        model.Heights(xs, ys, zs);
        double[] errors = [.. Enumerable.Range(0, zs.Length).Select(k => zs[k] - At(xs[k], ys[k]))];
        return (errors.Max(Math.Abs), Math.Sqrt(errors.Average(e => e * e)));
    }
}
