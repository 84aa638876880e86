using MathNet.Numerics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>Highest minus lowest height of a tilted plane over a rectangle, |b|w + |c|d.</summary>
internal static class TiltSpread
{
    internal static bool IsTilted(double slopeX, double slopeY, SlopeCovariance covariance, double degreesOfFreedom)
    {
        double determinant = (covariance.X * covariance.Y) - (covariance.Both * covariance.Both);
        double distance = ((slopeX * slopeX * covariance.Y) - (2 * slopeX * slopeY * covariance.Both) + (slopeY * slopeY * covariance.X)) / determinant;
        return distance > 2 * TwoSidedTest.FisherQuantile2(TwoSidedTest.Risk, degreesOfFreedom);
    }

    /// <summary>
    /// Spread of a measured plane. First order where the tilt is significant; elsewhere u is widened, where it must be, until the 95 %
    /// interval reaches zero, since the data do not exclude a level plane.
    /// </summary>
    internal static Measured<Length> Of(PlaneSolution plane, double width, double depth)
    {
        SlopeCovariance v = plane.SlopeCovariance;
        double spread = (Math.Abs(plane.SlopeX) * width) + (Math.Abs(plane.SlopeY) * depth);
        double cross = 2 * width * depth * v.Both * (plane.SlopeX * plane.SlopeY < 0 ? -1 : 1);
        double u = Math.Sqrt(Math.Max(0, (width * width * v.X) + (depth * depth * v.Y) + cross));
        if (!IsTilted(plane.SlopeX, plane.SlopeY, v, plane.DegreesOfFreedom))
        {
            double factor = Measured<Length>.FromSi(spread, u, plane.DegreesOfFreedom).Interval().CoverageFactor;
            u = Math.Max(u, spread / factor);
        }

        return Measured<Length>.FromSi(spread, u, plane.DegreesOfFreedom);
    }

    /// <summary>
    /// Mean and standard uncertainty of |B|w + |C|d for B, C about zero, jointly t with ν degrees of freedom: E|t| = 2√(ν/π)Γ((ν + 1)/2)/(Γ(ν/2)(ν − 1)),
    /// E|BC| = ν/(ν − 2)·(2/π)σ₁σ₂(√(1 − ρ²) + ρ asin ρ); u is the standard deviation over √(ν/(ν − 2)), the scale of a t distribution. JCGM 101:2008,
    /// 6.4.9, for the t distribution; Nabeya 1951, Ann. Inst. Stat. Math. 3, 2, for E|BC| (from memory).
    /// </summary>
    internal static Measured<Length> OfLeveled(SlopeCovariance slopes, double width, double depth, double degreesOfFreedom)
    {
        double sx = width * Math.Sqrt(slopes.X);
        double sy = depth * Math.Sqrt(slopes.Y);
        double product = sx * sy;
        double r = product > 0 ? Math.Clamp(width * depth * slopes.Both / product, -1, 1) : 0;
        double square = (sx * sx) + (sy * sy) + (4 / Math.PI * product * (Math.Sqrt(1 - (r * r)) + (r * Math.Asin(r))));
        if (degreesOfFreedom <= 2)
        {
            // no second moment: the normal mean, and a scale that is not narrowed by it
            return Measured<Length>.FromSi(Math.Sqrt(2 / Math.PI) * (sx + sy), Math.Sqrt(square), degreesOfFreedom);
        }

        double mean = MeanOfAbsolute(degreesOfFreedom) * (sx + sy);
        double narrowing = double.IsPositiveInfinity(degreesOfFreedom) ? 1 : (degreesOfFreedom - 2) / degreesOfFreedom;
        return Measured<Length>.FromSi(mean, Math.Sqrt(Math.Max(0, square - (mean * mean * narrowing))), degreesOfFreedom);
    }

    private static double MeanOfAbsolute(double degreesOfFreedom) => double.IsPositiveInfinity(degreesOfFreedom)
        ? Math.Sqrt(2 / Math.PI)
        : 2 * Math.Sqrt(degreesOfFreedom / Math.PI) / (degreesOfFreedom - 1)
            * Math.Exp(SpecialFunctions.GammaLn((degreesOfFreedom + 1) / 2) - SpecialFunctions.GammaLn(degreesOfFreedom / 2));
}
