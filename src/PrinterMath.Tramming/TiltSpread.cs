using MathNet.Numerics;
using MathNet.Numerics.Distributions;
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

    /// <summary>
    /// The same for slopes about any mean, with σ the scale of t: E|b + σt| = 2σ·f(b/σ)·(ν + b²/σ²)/(ν − 1) + b(2F(b/σ) − 1), and
    /// cov(|B|, |C|) by the first two terms of Mehler's expansion, ρσ₁σ₂(2Φ₁ − 1)(2Φ₂ − 1) + ρ²σ₁σ₂·2φ₁φ₂ (normal; both from memory).
    /// </summary>
    internal static Measured<Length> OfPredicted(double slopeX, double slopeY, SlopeCovariance slopes, double width, double depth, double degreesOfFreedom)
    {
        if (slopeX == 0 && slopeY == 0)
        {
            return OfLeveled(slopes, width, depth, degreesOfFreedom);
        }

        double sx = width * Math.Sqrt(slopes.X);
        double sy = depth * Math.Sqrt(slopes.Y);
        double bx = width * slopeX;
        double by = depth * slopeY;
        double r = sx * sy > 0 ? Math.Clamp(width * depth * slopes.Both / (sx * sy), -1, 1) : 0;
        double mean = MeanOfAbsolute(bx, sx, degreesOfFreedom) + MeanOfAbsolute(by, sy, degreesOfFreedom);
        double signs = Sign(bx / sx) * Sign(by / sy);
        double both = sx * sy * ((r * signs) + (r * r * 2 * Normal.PDF(0, 1, bx / sx) * Normal.PDF(0, 1, by / sy)));
        double variance = VarianceOfAbsolute(bx, sx) + VarianceOfAbsolute(by, sy) + (2 * both);
        return Measured<Length>.FromSi(mean, Math.Sqrt(variance), degreesOfFreedom);

        static double Sign(double ratio) => (2 * Normal.CDF(0, 1, ratio)) - 1;

        static double VarianceOfAbsolute(double b, double s)
        {
            double m = MeanOfAbsolute(b, s, double.PositiveInfinity);
            return Math.Max(0, (s * s) + ((b - m) * (b + m)));
        }
    }

    private static double MeanOfAbsolute(double b, double s, double degreesOfFreedom)
    {
        double t = b / s;
        return degreesOfFreedom is <= 1 or double.PositiveInfinity
            ? (2 * s * Normal.PDF(0, 1, t)) + (b * ((2 * Normal.CDF(0, 1, t)) - 1))
            : (2 * s * StudentT.PDF(0, 1, degreesOfFreedom, t) * (degreesOfFreedom + (t * t)) / (degreesOfFreedom - 1)) + (b * ((2 * StudentT.CDF(0, 1, degreesOfFreedom, t)) - 1));
    }

    private static double MeanOfAbsolute(double degreesOfFreedom) => double.IsPositiveInfinity(degreesOfFreedom)
        ? Math.Sqrt(2 / Math.PI)
        : 2 * Math.Sqrt(degreesOfFreedom / Math.PI) / (degreesOfFreedom - 1)
            * Math.Exp(SpecialFunctions.GammaLn((degreesOfFreedom + 1) / 2) - SpecialFunctions.GammaLn(degreesOfFreedom / 2));
}
