using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>Joint fit of plane and saddle: the saddle's part that no plane takes, against the residuals of the plane.</summary>
internal static class TwistEstimator
{
    private const int Coefficients = 4;

    /// <summary>Points whose saddle is, a plane apart, below this mean square of the pattern's 1 say nothing about a twist.</summary>
    private const double LeastMeanSquare = 1e-4;

    internal static BedTwist Result(TwistFit fit, bool removed)
    {
        if (fit.Missing is not null)
        {
            return new BedTwist(default, fit.Missing);
        }

        var measured = Measured<Length>.FromSi(fit.Amplitude, Math.Sqrt(fit.Variance), fit.DegreesOfFreedom);
        return TwoSidedTest.IsSignificant(measured.SiValue, measured.SiStandardUncertainty, measured.DegreesOfFreedom)
            ? new BedTwist(measured, Significant(measured, removed))
            : new BedTwist(measured, null);
    }

    internal static TwistFit Fit(PlaneFit plane, TwistPattern pattern)
    {
        if (plane.Blocking is not null)
        {
            return Without("twist.noPlane", "The probe points fix no plane, so no twist either.");
        }

        if (!pattern.IsSaddle)
        {
            return Without("twist.noSaddle", "One support stands inside the triangle of the others, or all but one in one line; their heights form no saddle.");
        }

        PrincipalAxes axes = plane.Solution.Axes;
        ReadOnlySpan<Place> places = plane.Places;
        double mean = 0, along = 0, across = 0;
        foreach (Place place in places)
        {
            (double u, double v) = axes.Local(place.X, place.Y);
            double p = place.Weight * pattern.At(place.X, place.Y);
            mean += p / axes.Weight;
            along += p * u / axes.AlongMoment;
            across += p * v / axes.AcrossMoment;
        }

        double square = 0, product = 0;
        for (int i = 0; i < places.Length; i++)
        {
            (double u, double v) = axes.Local(places[i].X, places[i].Y);
            double rest = pattern.At(places[i].X, places[i].Y) - mean - (along * u) - (across * v);
            square += places[i].Weight * rest * rest;
            product += places[i].Weight * rest * plane.ResidualSpan[i].SiValue;
        }

        if (square <= LeastMeanSquare * axes.Weight)
        {
            return Without("twist.notProbed", "The probe points lie where a twisted bed looks like a tilted one; probe near all the supports.");
        }

        double amplitude = product / square;
        double squares = Math.Max(0, plane.Noise.WeightedSquares - (amplitude * product));
        var noise = NoiseScale.Of(plane.Noise.IsStated, plane.Noise.WidenForMisfit, squares, plane.Noise.Readings - Coefficients, plane.LargestHeight);
        return noise.IsKnown
            ? new TwistFit(null, amplitude, noise.UnitVariance / square, noise.UnitVariance, noise.DegreesOfFreedom, pattern, axes, mean, along, across)
            : Without("twist.uncertainty.unknown", "The readings leave no scatter beside plane and twist; state the probe's repeatability or probe more points.");
    }

    private static TwistFit Without(string code, string why) => TwistFit.Without(new Finding(code, FindingSeverity.Blocking, why));

    private static Finding Significant(Measured<Length> amplitude, bool removed) => new(
        "twist.significant",
        FindingSeverity.Caution,
        removed
            ? $"The bed is twisted by {amplitude} at the supports; the turns take it out, which strains a stiff bed or leaves it rocking on two supports."
            : $"The bed is twisted by {amplitude} at the supports; no turning of screws on a stiff bed removes it, and it is kept out of the turns.",
        new FindingNumber("amplitude", amplitude.SiValue, "m"),
        new FindingNumber("standardUncertainty", amplitude.SiStandardUncertainty, "m"));
}
