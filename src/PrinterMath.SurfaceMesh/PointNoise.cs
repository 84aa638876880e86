using MathNet.Numerics.Distributions;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Standard uncertainty of each height reading, where it is known for all of them: the point's own, else the stated repeatability.</summary>
internal sealed class PointNoise
{
    private PointNoise(double[] standardUncertainties, double degreesOfFreedom)
    {
        StandardUncertainties = standardUncertainties;
        DegreesOfFreedom = degreesOfFreedom;
    }

    internal double[] StandardUncertainties { get; }

    internal double DegreesOfFreedom { get; }

    internal static PointNoise? Of(IReadOnlyList<ProbePoint> points, Length? repeatability, double degreesOfFreedom)
    {
        Guard.DegreesOfFreedom(degreesOfFreedom);
        double common = repeatability is { } length ? Guard.Positive(length.Meters, nameof(repeatability)) : 0;
        double[] u = new double[points.Count];
        bool leansOnCommon = false;
        for (int i = 0; i < u.Length; i++)
        {
            leansOnCommon |= !points[i].HasUncertainty;
            u[i] = points[i].HasUncertainty ? points[i].StandardUncertaintyMeters : common;
            if (u[i] == 0)
            {
                return null;
            }
        }

        return new PointNoise(u, leansOnCommon ? degreesOfFreedom : double.PositiveInfinity);
    }

    /// <summary>Probability that pure noise gives a larger mean square ratio than this: χ²/ν, or F when the noise itself is known with few degrees of freedom.</summary>
    internal static double ChanceOfMore(double sumOfSquaredRatios, double freedom, double noiseFreedom) =>
        noiseFreedom > 1e6
            ? 1 - ChiSquared.CDF(freedom, sumOfSquaredRatios)
            : 1 - FisherSnedecor.CDF(freedom, noiseFreedom, sumOfSquaredRatios / freedom);
}
