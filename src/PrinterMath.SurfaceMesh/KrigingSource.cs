using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Heights by kriging: the mean over the covariances that are left open.</summary>
internal sealed class KrigingSource : HeightSource
{
    private readonly KrigingReadings _readings;
    private readonly KrigingNode[] _nodes;
    private readonly double[] _lengths;
    private readonly double[][] _weights;
    private readonly double[] _coefficients;
    private readonly double _freedom;

    internal KrigingSource(SurfaceRectangle domain, KrigingReadings readings, KrigingNode[] nodes, double freedom, HeightModelOptions options, IEnumerable<Finding> findings)
        : base(domain, options, findings)
    {
        _readings = readings;
        _nodes = nodes;
        _freedom = freedom;
        IGrouping<double, KrigingNode>[] byLength = [.. nodes.GroupBy(node => node.Length)];
        _lengths = [.. byLength.Select(group => group.Key)];
        _weights = [.. byLength.Select(group => Enumerable.Range(0, readings.Count).Select(i => group.Sum(node => node.Share * node.Sill * node.System.Weights[i])).ToArray())];
        _coefficients = [.. Enumerable.Range(0, readings.Trend.Length).Select(t => nodes.Sum(node => node.Share * node.System.Coefficients[t]))];
    }

    internal override double Estimate(double x, double y)
    {
        double insideX = InsideX(x), insideY = InsideY(y);
        double height = Height(insideX, insideY), beyondX = Beyond(x, insideX), beyondY = Beyond(y, insideY);
        if (beyondX == 0 && beyondY == 0)
        {
            return height;
        }

        (double alongX, double alongY, double twist) = Slopes(insideX, insideY);
        return height + (beyondX * alongX) + (beyondY * alongY) + (beyondX * beyondY * twist);
    }

    internal override SurfaceGradient Gradient(double x, double y)
    {
        double insideX = InsideX(x), insideY = InsideY(y);
        (double alongX, double alongY, double twist) = Slopes(insideX, insideY);
        return new SurfaceGradient(
            insideX != x && Outside == OutsideRule.Clamp ? 0 : alongX + (Beyond(y, insideY) * twist),
            insideY != y && Outside == OutsideRule.Clamp ? 0 : alongY + (Beyond(x, insideX) * twist));
    }

    /// <summary>Law of total variance over the nodes. Outside a rectangle that is extended linearly the surface itself is predicted, to which the line is no better.</summary>
    internal override bool TryMeasure(double x, double y, out Measured<Length> height)
    {
        double estimate = Estimate(x, y);
        bool extends = Outside == OutsideRule.ExtendLinearly;
        height = Measured<Length>.FromSi(estimate, Math.Sqrt(Variance(extends ? x : InsideX(x), extends ? y : InsideY(y), estimate)), _freedom);
        return true;
    }

    internal override double InterpolationError(double x, double y)
    {
        double insideX = InsideX(x), insideY = InsideY(y);
        return 2 * Math.Sqrt(Variance(insideX, insideY, Height(insideX, insideY)));
    }

    internal override void Heights(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs)
    {
        for (int i = 0; i < zs.Length; i++)
        {
            zs[i] = Estimate(xs[i], ys[i]);
        }
    }

    private double Beyond(double value, double inside) => Outside == OutsideRule.ExtendLinearly ? value - inside : 0;

    private double Height(double x, double y)
    {
        double height = _coefficients[0];
        if (_coefficients.Length > 1)
        {
            height += (_coefficients[1] * (x - _readings.MiddleX) / _readings.Longest) + (_coefficients[2] * (y - _readings.MiddleY) / _readings.Longest);
        }

        for (int k = 0; k < _readings.Count; k++)
        {
            double squared = KrigingReadings.Squared(x - _readings.X[k], y - _readings.Y[k]);
            for (int l = 0; l < _lengths.Length; l++)
            {
                height += _weights[l][k] * _readings.Shape.Value(squared, _lengths[l]);
            }
        }

        return height;
    }

    private (double AlongX, double AlongY, double Twist) Slopes(double x, double y)
    {
        double alongX = 0, alongY = 0, twist = 0;
        if (_coefficients.Length > 1)
        {
            (alongX, alongY) = (_coefficients[1] / _readings.Longest, _coefficients[2] / _readings.Longest);
        }

        for (int k = 0; k < _readings.Count; k++)
        {
            double dx = x - _readings.X[k], dy = y - _readings.Y[k], squared = KrigingReadings.Squared(dx, dy);
            for (int l = 0; l < _lengths.Length; l++)
            {
                (double slope, double bend) = _readings.Shape.Derivatives(squared, _lengths[l]);
                alongX += _weights[l][k] * slope * dx;
                alongY += _weights[l][k] * slope * dy;
                twist += _weights[l][k] * bend * dx * dy;
            }
        }

        return (alongX, alongY, twist);
    }

    private double Variance(double x, double y, double mean)
    {
        double[] trend = [1, (x - _readings.MiddleX) / _readings.Longest, (y - _readings.MiddleY) / _readings.Longest];
        double total = 0;
        double[] k = new double[_readings.Count];
        foreach (KrigingNode node in _nodes)
        {
            double own = 0;
            for (int i = 0; i < k.Length; i++)
            {
                k[i] = node.Sill * _readings.Shape.Value(KrigingReadings.Squared(x - _readings.X[i], y - _readings.Y[i]), node.Length);
                own += k[i] * node.System.Weights[i];
            }

            for (int t = 0; t < _coefficients.Length; t++)
            {
                own += trend[t] * node.System.Coefficients[t];
            }

            double variance = node.Scale * node.System.Variance(k, trend.AsSpan(0, _coefficients.Length), node.Sill);
            total += node.Share * (variance + (_nodes.Length > 1 ? (own - mean) * (own - mean) : 0));
        }

        return total;
    }
}
