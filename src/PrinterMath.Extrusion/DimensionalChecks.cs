using System.Globalization;
using MathNet.Numerics.Distributions;
using PrinterMath.Measurement;

namespace PrinterMath.Extrusion;

/// <summary>Whether measured features can carry a fit of scale and offsets.</summary>
internal static class DimensionalChecks
{
    /// <summary>Beyond this correlation scale and an offset are told apart only by the last few per cent of the lengths' spread.</summary>
    private const double PoorCorrelation = 0.98;

    internal static Finding? NotSeparable(PrintedFeature[] features, LinearFit fit)
    {
        if (fit.TryGetStandardErrors(out _))
        {
            return null;
        }

        double shortest = features.Min(f => f.NominalMeters), longest = features.Max(f => f.NominalMeters);
        return new Finding(
            ExtrusionFindings.DimensionNotSeparable,
            FindingSeverity.Blocking,
            string.Create(CultureInfo.InvariantCulture, $"The {features.Length} features, {shortest * 1e3:G4} to {longest * 1e3:G4} mm long, cannot tell scale and offset apart: add a length that differs, or a centre distance."),
            new FindingNumber("features", features.Length, "1"),
            new FindingNumber("shortest", shortest, "m"),
            new FindingNumber("longest", longest, "m"));
    }

    internal static IEnumerable<Finding> Plausibility(PrintedFeature[] features)
    {
        PrintedFeature worst = features.MaxBy(f => Math.Abs(f.Deviation) / f.NominalMeters)!;
        if (Math.Abs(worst.Deviation) > 0.1 * worst.NominalMeters && Math.Abs(worst.Deviation) > 1e-3)
        {
            yield return new Finding(
                ExtrusionFindings.DimensionImplausible,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"A feature of {worst.NominalMeters * 1e3:G4} mm was measured as {worst.Measured.SiValue * 1e3:G4} mm: check the unit."),
                new FindingNumber("nominal", worst.NominalMeters, "m"),
                new FindingNumber("measured", worst.Measured.SiValue, "m"));
        }
    }

    internal static IEnumerable<Finding> Separation(LinearFit fit, string[] names)
    {
        for (int i = 1; i < names.Length; i++)
        {
            double r = fit.Correlation(0, i);
            if (Math.Abs(r) > PoorCorrelation)
            {
                yield return new Finding(
                    ExtrusionFindings.DimensionPoorlySeparated,
                    FindingSeverity.Caution,
                    string.Create(CultureInfo.InvariantCulture, $"Scale and {names[i]} are correlated by {r:0.###}: add a length that differs more, or a centre distance."),
                    new FindingNumber("correlation", r, "1"));
            }
        }
    }

    internal static Finding? Scatter(LinearFit fit, double significance)
    {
        int freedom = fit.DegreesOfFreedom;
        if (freedom < 1 || fit.ChiSquare is not { } chiSquare)
        {
            return null;
        }

        double limit = ChiSquared.InvCDF(freedom, 1 - significance);
        return chiSquare <= limit ? null : new Finding(
            ExtrusionFindings.DimensionScatter,
            FindingSeverity.Caution,
            string.Create(CultureInfo.InvariantCulture, $"The features scatter {Math.Sqrt(chiSquare / freedom):G2} times as much as their uncertainties say: look for warped, seamed or misread ones."),
            new FindingNumber("chiSquare", chiSquare, "1"),
            new FindingNumber("chiSquareLimit", limit, "1"),
            new FindingNumber("degreesOfFreedom", freedom, "1"));
    }

    internal static Finding Unchecked(int features) => new(
        ExtrusionFindings.DimensionUnchecked,
        FindingSeverity.Note,
        string.Create(CultureInfo.InvariantCulture, $"The {features} features are just enough: nothing checks the fit. Measure more."),
        new FindingNumber("features", features, "1"));
}
