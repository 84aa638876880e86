using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A fitted thin plate, in coordinates scaled to the rectangle.</summary>
internal sealed class ThinPlateSource : HeightSource
{
    private const int Chunk = 256;
    private readonly PlateFit _fit;

    internal ThinPlateSource(SurfaceRectangle domain, PlateFit fit, HeightModelOptions options, IEnumerable<Finding> findings)
        : base(domain, options, findings) => _fit = fit;

    internal override double Estimate(double x, double y)
    {
        double insideX = InsideX(x), insideY = InsideY(y);
        (double height, double alongX, double alongY, double twist) = _fit.At(insideX, insideY);
        double beyondX = Beyond(x, insideX), beyondY = Beyond(y, insideY);
        return height + (beyondX * alongX) + (beyondY * alongY) + (beyondX * beyondY * twist);
    }

    internal override SurfaceGradient Gradient(double x, double y)
    {
        double insideX = InsideX(x), insideY = InsideY(y);
        (_, double alongX, double alongY, double twist) = _fit.At(insideX, insideY);
        return new SurfaceGradient(
            insideX != x && Outside == OutsideRule.Clamp ? 0 : alongX + (Beyond(y, insideY) * twist),
            insideY != y && Outside == OutsideRule.Clamp ? 0 : alongY + (Beyond(x, insideX) * twist));
    }

    internal override bool TryMeasure(double x, double y, out Measured<Length> height)
    {
        double estimate = Estimate(x, y);
        if (!_fit.HasUncertainty)
        {
            height = default;
            return false;
        }

        double insideX = InsideX(x), insideY = InsideY(y);
        (double noise, double bending) = _fit.Variances(insideX, insideY, 0, 0);
        double beyondX = Beyond(x, insideX), beyondY = Beyond(y, insideY);
        noise = beyondX == 0 && beyondY == 0 ? noise : _fit.Variances(insideX, insideY, beyondX, beyondY).Noise;
        height = Measured<Length>.FromSi(estimate, Math.Sqrt(noise + bending), _fit.DegreesOfFreedom);
        return true;
    }

    internal override double InterpolationError(double x, double y) => 2 * Math.Sqrt(_fit.Variances(InsideX(x), InsideY(y), 0, 0).Bending);

    internal override void Heights(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs)
    {
        Span<double> x = stackalloc double[Chunk], y = stackalloc double[Chunk];
        for (int from = 0; from < zs.Length; from += Chunk)
        {
            int count = Math.Min(Chunk, zs.Length - from);
            bool isInside = true;
            for (int i = 0; i < count; i++)
            {
                x[i] = InsideX(xs[from + i]);
                y[i] = InsideY(ys[from + i]);
                isInside &= x[i] == xs[from + i] && y[i] == ys[from + i];
            }

            _fit.Heights(x[..count], y[..count], zs.Slice(from, count));
            for (int i = 0; !isInside && Outside == OutsideRule.ExtendLinearly && i < count; i++)
            {
                zs[from + i] = Estimate(xs[from + i], ys[from + i]);
            }
        }
    }

    private double Beyond(double value, double inside) => Outside == OutsideRule.ExtendLinearly ? value - inside : 0;
}
