using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>How far a candidate lies from heights that it was not made from.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class SurfaceScore
{
    internal SurfaceScore(SurfaceCandidate candidate, double meanSquare, double surplus, double standardError)
    {
        Candidate = candidate;
        MeanSquareMeters = meanSquare;
        Surplus = Area.FromSquareMeters(surplus);
        SurplusStandardError = Area.FromSquareMeters(standardError);
    }

    /// <summary>The candidate.</summary>
    public SurfaceCandidate Candidate { get; }

    /// <summary>Root mean square deviation at the check points, the noise of those readings in it.</summary>
    public Length RootMeanSquare => Length.FromMeters(Math.Sqrt(MeanSquareMeters));

    /// <summary>Mean square deviation above that of the best candidate, in m²; zero for the best.</summary>
    public Area Surplus { get; }

    /// <summary>Standard error of <see cref="Surplus"/> from the differences at each check point, in which the noise of a reading, which is the same for both, partly cancels.</summary>
    public Area SurplusStandardError { get; }

    /// <summary>Whether the surplus is within one standard error.</summary>
    public bool IsAsGood => Surplus <= SurplusStandardError;

    internal double MeanSquareMeters { get; }

    /// <summary>Invariant text.</summary>
    /// <returns>Name and deviation.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Candidate.Name}: {RootMeanSquare.Micrometers:0.0} µm{(IsAsGood ? ", as good as the best" : string.Empty)}");
}
