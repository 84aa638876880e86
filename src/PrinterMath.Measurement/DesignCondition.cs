using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace PrinterMath.Measurement;

/// <summary>Condition of the design with unit columns, centred when there is an intercept, and the combination it hardly sees.</summary>
/// <remarks>
/// κ₂ = ‖S‖·‖S⁻¹‖ with the scaled triangle S; both norms come out accurate because the inverse was computed in doubled precision.
/// </remarks>
internal sealed class DesignCondition
{
    private DesignCondition(double number, double[] weakest)
    {
        Number = number;
        Weakest = weakest;
    }

    internal double Number { get; }

    /// <summary>Unit vector of the least visible combination of the scaled columns.</summary>
    internal IReadOnlyList<double> Weakest { get; }

    internal static DesignCondition Of(Orthogonalization factor, DoubleDouble[][] inverse, int first)
    {
        int p = inverse.Length - first;
        if (p == 0)
        {
            return new DesignCondition(1, []);
        }

        double[] norms = new double[p];
        Matrix<double> scaled = Matrix<double>.Build.Dense(p, p);
        Matrix<double> reciprocal = Matrix<double>.Build.Dense(p, p);
        for (int j = 0; j < p; j++)
        {
            for (int i = 0; i <= j; i++)
            {
                scaled[i, j] = (double)factor.Triangle(i + first, j + first);
                norms[j] = double.Hypot(norms[j], scaled[i, j]);
            }

            for (int i = 0; i <= j; i++)
            {
                scaled[i, j] /= norms[j];
                reciprocal[i, j] = norms[i] * (double)inverse[j + first][i + first];
            }
        }

        Svd<double> hidden = reciprocal.Svd(computeVectors: true);
        return new DesignCondition(scaled.L2Norm() * hidden.S[0], hidden.U.Column(0).ToArray());
    }
}
