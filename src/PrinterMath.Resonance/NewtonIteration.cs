using MathNet.Numerics.LinearAlgebra;

namespace PrinterMath.Resonance;

/// <summary>Newton's method for as many equations as unknowns, near their solution.</summary>
internal static class NewtonIteration
{
    private const double Converged = 1e-13;
    private const double LongestStep = 0.5;
    private const int MostIterations = 14;

    /// <summary>Values and slopes (row: equation, column: unknown) at a point.</summary>
    internal delegate void Equations(double[] unknowns, double[] values, double[,] slopes);

    /// <summary>Moves the unknowns to the solution; false when they do not settle.</summary>
    internal static bool TrySolve(Equations equations, double[] unknowns)
    {
        int n = unknowns.Length;
        double[] values = new double[n];
        double[,] slopes = new double[n, n];
        double before = double.PositiveInfinity;
        for (int iteration = 0; iteration < MostIterations; iteration++)
        {
            equations(unknowns, values, slopes);
            double[] step = Matrix<double>.Build.DenseOfArray(slopes).LU().Solve(Vector<double>.Build.Dense(values)).AsArray();
            double largest = 0;
            for (int i = 0; i < n; i++)
            {
                double relative = Math.Abs(step[i]) / Math.Max(1, Math.Abs(unknowns[i]));
                if (!(relative <= LongestStep))
                {
                    return false;
                }

                largest = Math.Max(largest, relative);
                unknowns[i] -= step[i];
            }

            // Near the end a step is rounding alone and no longer shrinks.
            if (largest < Converged || (largest < 1e-10 && largest >= before))
            {
                return true;
            }

            before = largest;
        }

        return false;
    }
}
