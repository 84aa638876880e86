using MathNet.Numerics.Distributions;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>The least-squares fit of the six terms, and what follows from it.</summary>
internal sealed class ShapeFit
{
    private const int Terms = 6;

    /// <summary>A false alarm about the noise in one surface of a thousand.</summary>
    private const double RareChance = 0.001;

    private ShapeFit(ShapeComponent[] components, JointEstimate? joint, double? leftOver, double leftOverShare)
    {
        Components = components;
        Joint = joint;
        LeftOver = leftOver;
        LeftOverShare = leftOverShare;
    }

    internal ShapeComponent[] Components { get; }

    internal JointEstimate? Joint { get; }

    internal double? LeftOver { get; }

    internal double LeftOverShare { get; }

    internal double? NoiseShare { get; private init; }

    internal double? LeftOverChance { get; private init; }

    internal List<Finding> Findings { get; } = [];

    internal static ShapeFit? To(ProbePoint[] points, SurfaceRectangle rectangle, PointNoise? noise, double level)
    {
        double[] design = new double[points.Length * (Terms - 1)];
        double[] heights = new double[points.Length];
        for (int k = 0; k < points.Length; k++)
        {
            heights[k] = points[k].ZMeters;
            double xi = ((2 * points[k].XMeters) - rectangle.LeftMeters - rectangle.RightMeters) / (rectangle.RightMeters - rectangle.LeftMeters);
            double eta = ((2 * points[k].YMeters) - rectangle.FrontMeters - rectangle.RearMeters) / (rectangle.RearMeters - rectangle.FrontMeters);
            for (int term = 1; term < Terms; term++)
            {
                design[(k * (Terms - 1)) + term - 1] = LegendreTerms.Value(term, xi, eta);
            }
        }

        LinearFit fit = LinearLeastSquares.Fit(design, Terms - 1, heights, noise?.StandardUncertainties ?? []);
        return fit.TryGetCoefficients(out IReadOnlyList<double> c) ? From(fit, c, noise, level) : null;
    }

    private static ShapeFit From(LinearFit fit, IReadOnlyList<double> c, PointNoise? noise, double level)
    {
        int freedom = fit.DegreesOfFreedom;
        double? leftOver = freedom > 0 ? Math.Sqrt(fit.Readings.Sum(r => r.Residual * r.Residual) / freedom) : null;
        JointEstimate? joint = Jointly(fit, noise, leftOver);
        double total = Math.Pow(leftOver ?? 0, 2) + Enumerable.Range(1, Terms - 1).Sum(i => c[i] * c[i] * LegendreTerms.MeanSquare(i));
        double Share(double square) => total > 0 ? square / total : 0;
        ShapeComponent[] components = [.. Enumerable.Range(0, Terms).Select(i =>
        {
            Measured<Length> amplitude = joint?.Estimate<Length>(i) ?? default;
            double share = i == 0 ? 0 : Share(c[i] * c[i] * LegendreTerms.MeanSquare(i));
            return new ShapeComponent((ShapeTerm)i, c[i], amplitude, Reach((ShapeTerm)i) * Math.Abs(c[i]), share, Chance(amplitude), level);
        })];
        double leftOverShare = Share(Math.Pow(leftOver ?? 0, 2));
        double? ratioSquared = freedom > 0 ? fit.ChiSquare / freedom : null;
        double? chance = ratioSquared is double q && noise is not null ? PointNoise.ChanceOfMore(q * freedom, freedom, noise.DegreesOfFreedom) : null;
        var shape = new ShapeFit(components, joint, leftOver, leftOverShare)
        {
            NoiseShare = ratioSquared is double r && noise is not null ? leftOverShare * Math.Min(1, 1 / Math.Max(r, double.Epsilon)) : null,
            LeftOverChance = chance,
        };
        if (chance < RareChance)
        {
            shape.Findings.Add(ShapeFindings.LeftOver(Math.Sqrt(ratioSquared!.Value), chance.Value));
        }
        else if (1 - chance < RareChance)
        {
            shape.Findings.Add(ShapeFindings.NoiseOverstated(Math.Sqrt(ratioSquared!.Value), chance!.Value));
        }

        return shape;
    }

    private static JointEstimate? Jointly(LinearFit fit, PointNoise? noise, double? leftOver)
    {
        if (noise is null && leftOver is null or 0)
        {
            return null;
        }

        double[] covariance = new double[Terms * Terms];
        for (int i = 0; i < covariance.Length; i++)
        {
            covariance[i] = fit.Covariance(i / Terms, i % Terms);
        }

        return JointEstimate.FromSi(
            [.. Enum.GetValues<ShapeTerm>().Select(term => term.ToString())],
            [.. Enumerable.Repeat("m", Terms)],
            [.. fit.Coefficients],
            covariance,
            noise?.DegreesOfFreedom ?? fit.DegreesOfFreedom);
    }

    /// <summary>Two-sided: F = (c/u)² with 1 and ν degrees of freedom.</summary>
    private static double? Chance(Measured<Length> amplitude)
    {
        if (!amplitude.HasValue || amplitude.SiStandardUncertainty == 0)
        {
            return null;
        }

        double t = Math.Abs(amplitude.SiValue) / amplitude.SiStandardUncertainty;
        return 2 * (amplitude.DegreesOfFreedom > 1e6 ? Normal.CDF(0, 1, -t) : StudentT.CDF(0, 1, amplitude.DegreesOfFreedom, -t));
    }

    /// <summary>Peak-to-valley of a term with unit amplitude.</summary>
    private static double Reach(ShapeTerm term) => term switch
    {
        ShapeTerm.Offset => 0,
        ShapeTerm.BowX or ShapeTerm.BowY => 1.5,
        _ => 2,
    };
}
