using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>A plane in the principal frame of its points: mean height, slopes along and across, and the variance of unit weight.</summary>
internal readonly record struct PlaneSolution(PrincipalAxes Axes, double MeanHeight, double SlopeAlong, double SlopeAcross, double UnitVariance, double DegreesOfFreedom)
{
    internal double SlopeX => (SlopeAlong * Axes.Cosine) - (SlopeAcross * Axes.Sine);

    internal double SlopeY => (SlopeAlong * Axes.Sine) + (SlopeAcross * Axes.Cosine);

    internal SlopeCovariance SlopeCovariance
    {
        get
        {
            double along = UnitVariance / Axes.AlongMoment;
            double across = UnitVariance / Axes.AcrossMoment;
            double c = Axes.Cosine;
            double s = Axes.Sine;
            return new SlopeCovariance((c * c * along) + (s * s * across), (s * s * along) + (c * c * across), c * s * (along - across));
        }
    }

    /// <summary>Height at the origin and the slopes, with their covariance.</summary>
    internal JointEstimate Coefficients
    {
        get
        {
            SlopeCovariance v = SlopeCovariance;
            double x = Axes.CentreX;
            double y = Axes.CentreY;
            double ab = -(x * v.X) - (y * v.Both);
            double ac = -(x * v.Both) - (y * v.Y);
            return JointEstimate.FromSi(
                ["height at origin", "slope along x", "slope along y"],
                ["m", "1", "1"],
                [Height(0, 0), SlopeX, SlopeY],
                [HeightCovariance(0, 0, 0, 0), ab, ac, ab, v.X, v.Both, ac, v.Both, v.Y],
                DegreesOfFreedom);
        }
    }

    internal double Height(double x, double y)
    {
        (double u, double v) = Axes.Local(x, y);
        return MeanHeight + (SlopeAlong * u) + (SlopeAcross * v);
    }

    internal double HeightCovariance(double x1, double y1, double x2, double y2) => UnitVariance * Axes.Influence(x1, y1, x2, y2);
}
