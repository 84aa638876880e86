namespace PrinterMath.Tramming;

/// <summary>Width of the narrowest zone in z. Its slope is that of the reference, 2·Σλᵢ·sᵢ: a larger one would show a wider zone.</summary>
internal sealed class MinimumZoneMeasure(MinimaxPlane zone) : ConvexMeasure
{
    private double[] _sums = [];

    internal override double Of(double[] residuals)
    {
        zone.Continue(residuals);
        return 2 * zone.HalfWidth;
    }

    private protected override (double Value, double Slope) Along(double[] noise, double[] shape, double size)
    {
        _sums = _sums.Length == noise.Length ? _sums : new double[noise.Length];
        FlatnessMeasures.Add(noise, size, shape, _sums);
        zone.Continue(_sums);
        double slope = 0;
        for (int k = 0; k < zone.Reference.Length; k++)
        {
            slope += 2 * zone.Signs[k] * zone.Levels[k] * shape[zone.Reference[k]];
        }

        return (2 * zone.HalfWidth, slope);
    }
}
