using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>Joint fit of plane and saddle: the saddle's part that no plane takes, against the residuals of the plane.</summary>
internal static class TwistEstimator
{
    private const int Coefficients = 4;

    /// <summary>Points whose saddle is, a plane apart, below this mean square of the pattern's 1 say nothing about a twist.</summary>
    private const double LeastMeanSquare = 1e-4;

    internal static BedTwist Estimate(PlaneFit plane, TwistPattern pattern)
    {
        if (plane.Blocking is not null)
        {
            return Without("twist.noPlane", "The probe points fix no plane, so no twist either.");
        }

        if (!pattern.IsSaddle)
        {
            return Without("twist.noSaddle", "One screw stands inside the triangle of the others, or three in one line; their heights form no saddle.");
        }

        (double square, double product) = Project(plane, pattern);
        if (square <= LeastMeanSquare * plane.Solution.Axes.Weight)
        {
            return Without("twist.notProbed", "The probe points lie where a twisted bed looks like a tilted one; probe near all four screws.");
        }

        double amplitude = product / square;
        double squares = Math.Max(0, plane.Noise.WeightedSquares - (amplitude * product));
        var noise = NoiseScale.Of(plane.Noise.IsStated, plane.Noise.WidenForMisfit, squares, plane.Noise.Readings - Coefficients, plane.LargestHeight);
        if (!noise.IsKnown)
        {
            return Without("twist.uncertainty.unknown", "The readings leave no scatter beside plane and twist; state the probe's repeatability or probe more points.");
        }

        var measured = Measured<Length>.FromSi(amplitude, Math.Sqrt(noise.UnitVariance / square), noise.DegreesOfFreedom);
        return TwoSidedTest.IsSignificant(measured.SiValue, measured.SiStandardUncertainty, measured.DegreesOfFreedom)
            ? new BedTwist(measured, Significant(measured))
            : new BedTwist(measured, null);
    }

    /// <summary>Σw·p̃² and Σw·p̃·r, with p̃ the saddle less its own fitted plane and r the residuals of the heights.</summary>
    private static (double Square, double Product) Project(PlaneFit plane, TwistPattern pattern)
    {
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

        return (square, product);
    }

    private static BedTwist Without(string code, string why) => new(default, new Finding(code, FindingSeverity.Blocking, why));

    private static Finding Significant(Measured<Length> amplitude) => new(
        "twist.significant",
        FindingSeverity.Caution,
        $"The bed is twisted by {amplitude} at the screws; no turning of screws on a stiff bed removes it, and it is kept out of the turns.",
        new FindingNumber("amplitude", amplitude.SiValue, "m"),
        new FindingNumber("standardUncertainty", amplitude.SiStandardUncertainty, "m"));
}
