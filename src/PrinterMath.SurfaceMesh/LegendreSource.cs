using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A sum of products of Legendre polynomials on a rectangle.</summary>
internal sealed class LegendreSource : HeightSource
{
    private readonly int _degree;
    private readonly double[] _coefficients;
    private readonly double[,]? _covariance;
    private readonly double _freedom;
    private readonly double _excess;

    internal LegendreSource(SurfaceRectangle domain, int degree, double[] coefficients, double[,]? covariance, double freedom, double excess, HeightModelOptions options, IEnumerable<Finding> findings)
        : base(domain, options, findings) =>
        (_degree, _coefficients, _covariance, _freedom, _excess) = (degree, coefficients, covariance, freedom, excess);

    internal override double Estimate(double x, double y)
    {
        Span<double> terms = stackalloc double[_coefficients.Length];
        Fill(x, y, terms);
        double height = 0;
        for (int i = 0; i < terms.Length; i++)
        {
            height += _coefficients[i] * terms[i];
        }

        return height;
    }

    internal override SurfaceGradient Gradient(double x, double y)
    {
        double insideX = InsideX(x), insideY = InsideY(y);
        bool extends = Outside == OutsideRule.ExtendLinearly;
        (double xi, double scaleX) = Scaled(insideX, Domain.LeftMeters, Domain.RightMeters);
        (double eta, double scaleY) = Scaled(insideY, Domain.FrontMeters, Domain.RearMeters);
        Span<double> p = stackalloc double[_degree + 1], dp = stackalloc double[_degree + 1], q = stackalloc double[_degree + 1], dq = stackalloc double[_degree + 1];
        LegendreTerms.Polynomials(xi, p, dp);
        LegendreTerms.Polynomials(eta, q, dq);
        double beyondX = extends ? (x - insideX) * scaleX : 0, beyondY = extends ? (y - insideY) * scaleY : 0, alongX = 0, alongY = 0;
        for (int i = 0; i < _coefficients.Length; i++)
        {
            (int a, int b) = LegendreTerms.Degrees(i);
            alongX += _coefficients[i] * dp[a] * (q[b] + (beyondY * dq[b]));
            alongY += _coefficients[i] * dq[b] * (p[a] + (beyondX * dp[a]));
        }

        return new SurfaceGradient(
            insideX != x && Outside == OutsideRule.Clamp ? 0 : alongX * scaleX,
            insideY != y && Outside == OutsideRule.Clamp ? 0 : alongY * scaleY);
    }

    internal override bool TryMeasure(double x, double y, out Measured<Length> height)
    {
        double estimate = Estimate(x, y);
        if (_covariance is null)
        {
            height = default;
            return false;
        }

        double[] terms = new double[_coefficients.Length];
        Fill(x, y, terms);
        double variance = 0;
        for (int i = 0; i < terms.Length; i++)
        {
            for (int j = 0; j < terms.Length; j++)
            {
                variance += terms[i] * terms[j] * _covariance[i, j];
            }
        }

        height = Measured<Length>.FromSi(estimate, Math.Sqrt(Math.Max(0, variance)), _freedom);
        return true;
    }

    internal override double InterpolationError(double x, double y)
    {
        _ = InsideX(x);
        _ = InsideY(y);
        return 2 * _excess;
    }

    internal override void Heights(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs)
    {
        for (int i = 0; i < zs.Length; i++)
        {
            zs[i] = Estimate(xs[i], ys[i]);
        }
    }

    private static (double Value, double Scale) Scaled(double at, double first, double last) => (((2 * at) - first - last) / (last - first), 2 / (last - first));

    /// <summary>Values of the terms at a place; outside, carried on from the border by (Pᵢ + β·Pᵢ′)(Pⱼ + γ·Pⱼ′).</summary>
    private void Fill(double x, double y, Span<double> terms)
    {
        double insideX = InsideX(x), insideY = InsideY(y);
        (double xi, double scaleX) = Scaled(insideX, Domain.LeftMeters, Domain.RightMeters);
        (double eta, double scaleY) = Scaled(insideY, Domain.FrontMeters, Domain.RearMeters);
        Span<double> p = stackalloc double[_degree + 1], dp = stackalloc double[_degree + 1], q = stackalloc double[_degree + 1], dq = stackalloc double[_degree + 1];
        LegendreTerms.Polynomials(xi, p, dp);
        LegendreTerms.Polynomials(eta, q, dq);
        bool extends = Outside == OutsideRule.ExtendLinearly;
        double beyondX = extends ? (x - insideX) * scaleX : 0, beyondY = extends ? (y - insideY) * scaleY : 0;
        int term = 0;
        for (int total = 0; total <= _degree; total++)
        {
            for (int b = 0; b <= total; b++)
            {
                int a = total - b;
                terms[term++] = (p[a] + (beyondX * dp[a])) * (q[b] + (beyondY * dq[b]));
            }
        }
    }
}
