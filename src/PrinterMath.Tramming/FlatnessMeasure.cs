namespace PrinterMath.Tramming;

/// <summary>A measure T of residuals: a seminorm, so that T(e + k·s) is convex in k.</summary>
internal abstract class FlatnessMeasure
{
    internal abstract double Of(double[] residuals);

    /// <summary>Root k of T(e + k·s) = value, for a value above T(e) and a shape of T(s) = 1: no more than value + T(e).</summary>
    /// <param name="noise">Residuals e of noise alone.</param>
    /// <param name="alone">T(e).</param>
    /// <param name="shape">The shape s.</param>
    /// <param name="value">The value to reach.</param>
    /// <param name="start">Where to begin.</param>
    /// <param name="resolution">What T may miss the value by.</param>
    internal abstract double SizeAt(double[] noise, double alone, double[] shape, double value, double start, double resolution);
}
