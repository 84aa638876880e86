using MathNet.Numerics;
using MathNet.Numerics.RootFinding;

namespace PrinterMath.Extrusion;

/// <summary>Series Σ cₖ·exp(−λₖ²·Fo) for a cylinder that is suddenly heated from its side; the number of terms follows from Fo.</summary>
/// <remarks>
/// Wall at constant temperature: J₀(λ) = 0, centre 2/(λ·J₁), mean 4/λ². Through a film, λ·J₁ = Bi·J₀: centre 2·J₁/(λ·(J₀² + J₁²)), mean 4·J₁²/(λ²·(J₀² + J₁²)). The k-th root lies between the
/// zeros of J₁ and J₀. At short times the centre is untouched, to exp(−1/(4·Fo)), and the mean follows from the expansion of the Laplace transform 2·I₁(q)/(s·q·I₀(q)) for large q = √s.
/// </remarks>
internal sealed class HeatingSeries
{
    /// <summary>Below this the expansion for short times is exact to 1e-12.</summary>
    internal const double Short = 5e-4;

    /// <summary>exp(−40) is below rounding.</summary>
    private const double Negligible = 40;
    private static readonly double[] ZerosOfJ0 = [.. Enumerable.Range(1, 210).Select(k => Zero(0, k))];
    private static readonly double[] ZerosOfJ1 = [.. Enumerable.Range(1, 210).Select(k => Zero(1, k))];
    private readonly double[] _squares, _center, _mean;
    private readonly bool _fixedWall;

    private HeatingSeries(double[] roots, bool fixedWall)
    {
        _fixedWall = fixedWall;
        _squares = [.. roots.Select(root => root * root)];
        _center = new double[roots.Length];
        _mean = new double[roots.Length];
        for (int k = 0; k < roots.Length; k++)
        {
            double j0 = fixedWall ? 0 : SpecialFunctions.BesselJ(0, roots[k]), j1 = SpecialFunctions.BesselJ(1, roots[k]);
            double both = (j0 * j0) + (j1 * j1);
            _center[k] = 2 * j1 / (roots[k] * both);
            _mean[k] = 4 * j1 * j1 / (_squares[k] * both);
        }
    }

    internal static HeatingSeries FixedWall { get; } = new(ZerosOfJ0, true);

    /// <summary>Through a film, good from a Fourier number on, 1e-4 or more.</summary>
    internal static HeatingSeries Film(double biot, double from)
    {
        int terms = Math.Min(ZerosOfJ0.Length, 2 + (int)(Math.Sqrt(Negligible / from) / Math.PI));
        return new HeatingSeries([.. Enumerable.Range(0, terms).Select(k => Root(biot, k == 0 ? 0 : ZerosOfJ1[k - 1], ZerosOfJ0[k]))], false);
    }

    internal double Center(double fourier) => _fixedWall && fourier < Short ? 1 : Math.Clamp(Sum(_center, fourier), 0, 1);

    internal double Mean(double fourier)
    {
        if (!_fixedWall || fourier >= Short)
        {
            return Math.Clamp(Sum(_mean, fourier), 0, 1);
        }

        double t = fourier, root = Math.Sqrt(t / Math.PI);
        return 1 - (root * (4 - (t / 3) - (5 * t * t / 24))) + t + (t * t / 8) + (13 * t * t * t / 96);
    }

    /// <summary>The Fourier number at which the centre has a given part left, greater than 0 and less than 1.</summary>
    internal double FourierFor(double center)
    {
        double start = Math.Log(_center[0] / center) / _squares[0];
        double low = 1e-3, high = Math.Max(2 * low, start + 1);
        return Brent.FindRoot(fo => Math.Log(Math.Max(Center(fo), 1e-300) / center), low, high, 1e-15, 200);
    }

    private static double Zero(int order, int k)
    {
        // McMahon's first terms, then Newton; J₀' = −J₁ and J₁' = J₀ − J₁/x.
        double b = (k + (order / 2.0) - 0.25) * Math.PI, x = b - (((4 * order * order) - 1) / (8 * b));
        for (int i = 0; i < 6; i++)
        {
            double j0 = SpecialFunctions.BesselJ(0, x), j1 = SpecialFunctions.BesselJ(1, x);
            x -= order == 0 ? -j0 / j1 : j1 / (j0 - (j1 / x));
        }

        return x;
    }

    private static double Root(double biot, double low, double high) =>
        Brent.FindRoot(z => (z * SpecialFunctions.BesselJ(1, z)) - (biot * SpecialFunctions.BesselJ(0, z)), low, high, 1e-14, 200);

    private double Sum(double[] weights, double fourier)
    {
        double sum = 0;
        for (int k = 0; k < weights.Length; k++)
        {
            double exponent = _squares[k] * fourier;
            if (exponent > Negligible)
            {
                break;
            }

            sum += weights[k] * Math.Exp(-exponent);
        }

        return sum == 0 ? weights[0] * Math.Exp(-_squares[0] * fourier) : sum;
    }
}
