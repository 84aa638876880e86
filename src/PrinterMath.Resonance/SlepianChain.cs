namespace PrinterMath.Resonance;

/// <summary>The matrix L + D of <see cref="SlepianTapers"/>: how many eigenvalues lie below a number, and eigenvectors.</summary>
/// <remarks>With pivots d_i = w_{i+1} + s_i the factorization is s_i = D_i − λ + w_i·s_{i−1}/(w_i + s_{i−1}), in which nothing large is subtracted.</remarks>
internal sealed class SlepianChain(int length, double halfBandwidth)
{
    private readonly double _scale = 2 * Math.Pow(Math.Sin(Math.PI * halfBandwidth), 2);

    /// <summary>The eigenvector of the index-th smallest eigenvalue, of length 1 and with the sign of <see cref="SlepianTapers"/>.</summary>
    /// <remarks>Bisection until the eigenvalue is well apart from its neighbours, then Rayleigh quotients, whose error is cubed by each.</remarks>
    internal double[] Vector(int index)
    {
        double lambda = Bisect(index);
        double[] vector = [];
        for (int turn = 0; turn < 4; turn++)
        {
            (vector, double residual) = Twisted(lambda);
            double squares = 0;
            foreach (double v in vector)
            {
                squares += v * v;
            }

            lambda += residual / squares;
        }

        Normalize(vector, index % 2 == 0);
        return vector;
    }

    private double Bisect(int index)
    {
        double low = 0, high = _scale * length * length;
        while (Below(high) <= index)
        {
            (low, high) = (high, 2 * high);
        }

        while (high - low > 1e-4 * high)
        {
            double middle = low + ((high - low) / 2);
            (low, high) = Below(middle) > index ? (low, middle) : (middle, high);
        }

        return low + ((high - low) / 2);
    }

    /// <summary>Number of eigenvalues below λ: of negative pivots.</summary>
    private int Below(double lambda)
    {
        int count = 0;
        double s = 0;
        for (int i = 0; i < length; i++)
        {
            s = Next(s, Weight(i), i, lambda);
            count += Weight(i + 1) + s < 0 ? 1 : 0;
        }

        return count;
    }

    /// <summary>Eigenvector of an eigenvalue: factored from both ends, joined where the two leave least.</summary>
    private (double[] Vector, double Residual) Twisted(double lambda)
    {
        double[] forward = new double[length], backward = new double[length];
        double s = 0;
        for (int i = 0; i < length; i++)
        {
            forward[i] = s = Next(s, Weight(i), i, lambda);
        }

        s = 0;
        for (int i = length - 1; i >= 0; i--)
        {
            backward[i] = s = Next(s, Weight(i + 1), i, lambda);
        }

        int twist = Enumerable.Range(0, length).MinBy(i => Math.Abs(forward[i] + backward[i] - Diagonal(i) + lambda));
        double[] vector = new double[length];
        vector[twist] = 1;
        for (int i = twist - 1; i >= 0; i--)
        {
            vector[i] = Weight(i + 1) * vector[i + 1] / NotZero(Weight(i + 1) + forward[i]);
        }

        for (int i = twist + 1; i < length; i++)
        {
            vector[i] = Weight(i) * vector[i - 1] / NotZero(Weight(i) + backward[i]);
        }

        return (vector, forward[twist] + backward[twist] - Diagonal(twist) + lambda);
    }

    private double Next(double before, double weight, int i, double lambda) =>
        Diagonal(i) - lambda + (weight == 0 ? 0 : weight * (before / NotZero(weight + before)));

    /// <summary>w_i between samples i − 1 and i; zero at both ends.</summary>
    private double Weight(int i) => i * (double)(length - i) / 2;

    private double Diagonal(int i)
    {
        double t = ((length - 1) / 2.0) - i;
        return _scale * t * t;
    }

    private static double NotZero(double pivot) => pivot == 0 ? double.Epsilon * 1e30 : pivot;

    private static void Normalize(double[] vector, bool symmetric)
    {
        double sum = 0, squares = 0;
        for (int i = 0; i < vector.Length; i++)
        {
            sum += symmetric || 2 * i < vector.Length ? vector[i] : 0;
            squares += vector[i] * vector[i];
        }

        double scale = (sum < 0 ? -1 : 1) / Math.Sqrt(squares);
        for (int i = 0; i < vector.Length; i++)
        {
            vector[i] *= scale;
        }
    }
}
