namespace WorkshopSimulator;

/// <summary>One natural mode of a span.</summary>
public sealed class SpanMode
{
    private readonly double[] _nodes;
    private readonly double[] _degrees;

    internal SpanMode(double frequencyHertz, double[] nodes, double[] degrees)
    {
        FrequencyHertz = frequencyHertz;
        _nodes = nodes;
        _degrees = degrees;
    }

    /// <summary>Natural frequency.</summary>
    public double FrequencyHertz { get; }

    /// <summary>Shape at a place along the span, mass-normalised.</summary>
    /// <param name="metres">Place from the left end.</param>
    /// <returns>The displacement, in a scale common to all modes of the span.</returns>
    public double ShapeAt(double metres)
    {
        int e = 0;
        while (e + 2 < _nodes.Length && _nodes[e + 1] < metres)
        {
            e++;
        }

        double h = _nodes[e + 1] - _nodes[e];
        Span<double> value = stackalloc double[4];
        Span<double> unused = stackalloc double[8];
        HermiteShape.At((metres - _nodes[e]) / h, h, value, unused[..4], unused[4..]);
        double sum = 0;
        for (int i = 0; i < 4; i++)
        {
            sum += value[i] * _degrees[(2 * e) + i];
        }

        return sum;
    }
}
