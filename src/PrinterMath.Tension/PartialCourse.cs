namespace PrinterMath.Tension;

/// <summary>Logarithm of the complex amplitude of one partial over the blocks, less its best parabola; weighted by power, so that the noise of every block counts alike.</summary>
internal sealed class PartialCourse
{
    private const double LeastPower = 3e-4;
    private const int Degree = 2;

    private readonly double[] _weight;
    private readonly double[] _re;
    private readonly double[] _im;
    private readonly double[][] _basis;
    private readonly double _rest;

    private PartialCourse(double[] weight, double[] re, double[] im, double[][] basis, double power)
    {
        _weight = weight;
        _re = re;
        _im = im;
        _basis = basis;
        Power = power;
        for (int b = 0; b < weight.Length; b++)
        {
            _rest += weight[b] * ((re[b] * re[b]) + (im[b] * im[b]));
        }

        RestShare = _rest / weight.Sum();
    }

    internal int Blocks => _weight.Length;

    internal double Power { get; }

    /// <summary>Mean square of what the parabola leaves, a ratio to the power of the partial.</summary>
    internal double RestShare { get; }

    internal static PartialCourse? Of(PartialTracker track, int partial, int first)
    {
        double largest = 0, power = 0;
        for (int b = first; b < track.Blocks; b++)
        {
            largest = Math.Max(largest, track.PowerAt(b, partial));
            power += track.PowerAt(b, partial);
        }

        int count = Math.Max(0, track.Blocks - first);
        while (count > 0 && track.PowerAt(first + count - 1, partial) <= LeastPower * largest)
        {
            count--;
        }

        double[] weight = new double[count], re = new double[count], im = new double[count];
        double phase = 0;
        for (int b = 0; b < count; b++)
        {
            weight[b] = track.PowerAt(first + b, partial) / largest;
            if (!(weight[b] > 0))
            {
                return null;
            }

            re[b] = 0.5 * Math.Log(weight[b]);
            im[b] = phase;
            phase += b + 1 < count ? 2 * Math.PI * track.HopSeconds * track.OffsetAfter(first + b, partial) : 0;
        }

        if (count < Degree + 5)
        {
            return null;
        }

        double[][] basis = Basis(weight);
        foreach (double[] shape in basis)
        {
            Remove(weight, re, shape);
            Remove(weight, im, shape);
        }

        return new PartialCourse(weight, re, im, basis, power);
    }

    /// <summary>
    /// How well a rotation by <paramref name="turn"/> turns a block, either way round, explains what is left: log likelihood ratio over the half that it
    /// explains of any real curve, and its amplitude.
    /// </summary>
    internal (double Odds, double Level) Turning(double turn)
    {
        (double stepS, double stepC) = Math.SinCos(2 * Math.PI * turn);
        Span<double> onC = stackalloc double[Degree + 1], onS = stackalloc double[Degree + 1];
        onC.Clear();
        onS.Clear();
        double c = 1, s = 0, rc = 0, rs = 0, ic = 0, isn = 0, norm = 0;
        for (int b = 0; b < _weight.Length; b++)
        {
            double wc = _weight[b] * c, ws = _weight[b] * s;
            rc += wc * _re[b];
            rs += ws * _re[b];
            ic += wc * _im[b];
            isn += ws * _im[b];
            norm += _weight[b];
            for (int j = 0; j <= Degree; j++)
            {
                onC[j] += wc * _basis[j][b];
                onS[j] += ws * _basis[j][b];
            }

            (c, s) = ((c * stepC) - (s * stepS), (s * stepC) + (c * stepS));
        }

        for (int j = 0; j <= Degree; j++)
        {
            norm -= (onC[j] * onC[j]) + (onS[j] * onS[j]);
        }

        double forward = Square(rc + isn) + Square(ic - rs), backward = Square(rc - isn) + Square(ic + rs);
        double along = Math.Max(forward, backward);
        double explained = norm > 0 ? Math.Min(0.999, along / norm / _rest) : 0;
        double x = Math.PI * 2 * turn, response = turn < 1e-6 ? 1 : Math.Sin(x) / x / (1 - Square(2 * turn));
        return ((Blocks - Degree - 2) * Math.Max(0, -Math.Log(2 * (1 - explained))), norm > 0 ? Math.Sqrt(along) / norm / response : 0);
    }

    private static double Square(double x) => x * x;

    /// <summary>Polynomials that are orthonormal under the weights.</summary>
    private static double[][] Basis(double[] weight)
    {
        double[][] basis = new double[Degree + 1][];
        for (int j = 0; j <= Degree; j++)
        {
            double[] shape = new double[weight.Length];
            for (int b = 0; b < shape.Length; b++)
            {
                shape[b] = j == 0 ? 1 : basis[j - 1][b] * b / shape.Length;
            }

            for (int k = 0; k < j; k++)
            {
                Remove(weight, shape, basis[k]);
            }

            double norm = 0;
            for (int b = 0; b < shape.Length; b++)
            {
                norm += weight[b] * shape[b] * shape[b];
            }

            double scale = norm > 0 ? 1 / Math.Sqrt(norm) : 0;
            for (int b = 0; b < shape.Length; b++)
            {
                shape[b] *= scale;
            }

            basis[j] = shape;
        }

        return basis;
    }

    private static void Remove(double[] weight, double[] from, double[] shape)
    {
        double along = 0;
        for (int b = 0; b < from.Length; b++)
        {
            along += weight[b] * from[b] * shape[b];
        }

        for (int b = 0; b < from.Length; b++)
        {
            from[b] -= along * shape[b];
        }
    }
}
