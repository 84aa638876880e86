namespace PrinterMath.SurfaceMesh;

/// <summary>Coefficients of a thin plate through pooled points, and what they are worth.</summary>
internal sealed class PlateFit
{
    private readonly PlateSystem _system;
    private readonly PositiveDefinite _factor;
    private readonly double[] _x;
    private readonly double[] _y;
    private readonly double[] _bending;
    private readonly double[] _plane;
    private readonly double _middleX;
    private readonly double _middleY;
    private readonly double _scale;
    private readonly double _noiseVariance;
    private readonly double _bendingVariance;

    private PlateFit(PlateSystem system, PositiveDefinite factor, PlateFrame frame, double[] gamma, double delta, double? noiseVariance, double noiseFreedom, double trace)
    {
        _system = system;
        _factor = factor;
        (_x, _y, _middleX, _middleY, _scale) = (frame.X, frame.Y, frame.MiddleX, frame.MiddleY, frame.Scale);
        (_bending, _plane) = system.Coefficients(gamma);
        Delta = delta;
        ResidualFreedom = delta * trace;
        double squares = PositiveDefinite.Dot(gamma, gamma);
        LeftOverVariance = ResidualFreedom > 0 ? delta * delta * squares / ResidualFreedom : 0;
        HasUncertainty = noiseVariance is not null || (delta > 0 && LeftOverVariance > 0);
        _noiseVariance = noiseVariance ?? LeftOverVariance;
        DegreesOfFreedom = noiseVariance is not null ? noiseFreedom : Math.Max(1, ResidualFreedom);
        double byLikelihood = PositiveDefinite.Dot(system.Loads, gamma) / gamma.Length;
        _bendingVariance = delta > 0 ? Math.Min(_noiseVariance / delta, byLikelihood) : byLikelihood;
        Score = trace > 0 ? system.Count * squares / (trace * trace) : 0;
    }

    /// <summary>δ in scaled coordinates.</summary>
    internal double Delta { get; }

    /// <summary>n·8π·λ/δ in m²: the square of the scale.</summary>
    internal double SquaredScale => _scale * _scale;

    internal int Count => _system.Count;

    /// <summary>tr (I − A).</summary>
    internal double ResidualFreedom { get; }

    /// <summary>Variance of a reading of weight one by what is left over.</summary>
    internal double LeftOverVariance { get; }

    /// <summary>n·|(I − A)z|²/tr²(I − A) in m².</summary>
    internal double Score { get; }

    internal bool HasUncertainty { get; }

    internal double DegreesOfFreedom { get; }

    internal static PlateFit Of(PlateSystem system, PlateFrame frame, double delta, double? noiseVariance, double noiseFreedom, CancellationToken cancellation)
    {
        double[][] bending = system.Bending;
        PositiveDefinite factor = PositiveDefinite.Of(bending, delta, cancellation)
            ?? throw Guard.Refused("points", "Some places lie too close together for a plate to pass through all of them; smooth it, or average them.");
        double[] gamma = system.Loads;
        factor.Solve(gamma);
        double trace = delta > 0 ? factor.TraceOfInverse() : 0;
        return new PlateFit(system, factor, frame, gamma, delta, noiseVariance, noiseFreedom, trace);
    }

    /// <summary>Height, both slopes and the twist at a place in metres.</summary>
    internal (double Height, double AlongX, double AlongY, double Twist) At(double xMeters, double yMeters)
    {
        double x = (xMeters - _middleX) / _scale, y = (yMeters - _middleY) / _scale;
        double height = _plane[0] + (_plane[1] * x) + (_plane[2] * y), alongX = _plane[1], alongY = _plane[2], twist = 0;
        for (int k = 0; k < _x.Length; k++)
        {
            double dx = x - _x[k], dy = y - _y[k], squared = (dx * dx) + (dy * dy);
            if (squared > 0)
            {
                double log = Math.Log(squared);
                height += _bending[k] * 0.5 * squared * log;
                alongX += _bending[k] * dx * (log + 1);
                alongY += _bending[k] * dy * (log + 1);
                twist += _bending[k] * 2 * dx * dy / squared;
            }
        }

        return (height, alongX / _scale, alongY / _scale, twist / (_scale * _scale));
    }

    /// <summary>Heights of places in metres, which are overwritten.</summary>
    internal void Heights(Span<double> x, Span<double> y, Span<double> heights)
    {
        for (int i = 0; i < x.Length; i++)
        {
            x[i] = (x[i] - _middleX) / _scale;
            y[i] = (y[i] - _middleY) / _scale;
            heights[i] = _plane[0] + (_plane[1] * x[i]) + (_plane[2] * y[i]);
        }

        PlateKernel.Add(x, y, _x, _y, _bending, heights);
    }

    /// <summary>Variance from the noise of the readings, and from what the plate may do between them, of the height at a place carried on along its slopes.</summary>
    internal (double Noise, double Bending) Variances(double xMeters, double yMeters, double beyondX, double beyondY)
    {
        double x = (xMeters - _middleX) / _scale, y = (yMeters - _middleY) / _scale, bx = beyondX / _scale, by = beyondY / _scale;
        double[] values = new double[_x.Length];
        for (int k = 0; k < values.Length; k++)
        {
            double dx = x - _x[k], dy = y - _y[k], squared = (dx * dx) + (dy * dy);
            if (squared > 0)
            {
                double log = Math.Log(squared);
                values[k] = (0.5 * squared * log) + (((bx * dx) + (by * dy)) * (log + 1)) + (bx * by * 2 * dx * dy / squared);
            }
        }

        (double noise, double bending) = _system.Variances(_factor, values, [1, x + bx, y + by]);
        return (noise * _noiseVariance, bending * _bendingVariance);
    }
}
