using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>The largest |∂²z/∂x²| and |∂²z/∂y²| of a surface, in 1/m: what decides how far apart it may be probed.</summary>
/// <example><code>
/// SurfaceCurvature curvature = SurfaceCurvature.Estimate(coarseGrid);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class SurfaceCurvature
{
    private SurfaceCurvature(double alongX, double alongY, IReadOnlyList<Finding> findings)
    {
        (XInverseMeters, YInverseMeters) = (alongX, alongY);
        Findings = findings;
    }

    /// <summary>Largest |∂²z/∂x²|, zero or more.</summary>
    public ReciprocalLength AlongX => ReciprocalLength.FromInverseMeters(XInverseMeters);

    /// <summary>Largest |∂²z/∂y²|, zero or more.</summary>
    public ReciprocalLength AlongY => ReciprocalLength.FromInverseMeters(YInverseMeters);

    /// <summary>What was noticed, see <see cref="SurfaceFindings.CurvatureWithinNoise"/>.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    internal double XInverseMeters { get; }

    internal double YInverseMeters { get; }

    /// <summary>Curvatures that are known or assumed.</summary>
    /// <param name="alongX">Largest |∂²z/∂x²|, zero or more.</param>
    /// <param name="alongY">Largest |∂²z/∂y²|, zero or more.</param>
    /// <returns>The curvatures.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or negative.</exception>
    public static SurfaceCurvature Of(ReciprocalLength alongX, ReciprocalLength alongY) => new(
        Guard.NonNegative(alongX.InverseMeters, nameof(alongX)), Guard.NonNegative(alongY.InverseMeters, nameof(alongY)), []);

    /// <summary>The largest second differences of a grid, (zᵢ₊₁ − 2zᵢ + zᵢ₋₁)/h² where spacings are even.</summary>
    /// <param name="grid">A grid of at least three columns and three rows; places without three probed nodes in a row are left out.</param>
    /// <returns>
    /// The curvatures. Noise makes them larger, so a plan from them probes too much rather than too little; a feature narrower than two spacings is missed, and one as narrow as
    /// that is read too low. A finding says so when noise alone may have made them.
    /// </returns>
    /// <exception cref="ArgumentException">There are no three probed nodes in a row along x or along y.</exception>
    public static SurfaceCurvature Estimate(ProbedGrid grid)
    {
        GridNodes nodes = Guard.NotNull(grid).Nodes;
        (double alongX, double noiseX) = Largest(nodes, nodes.X, nodes.Y.Count, (i, line) => nodes.Index(i, line), "x");
        (double alongY, double noiseY) = Largest(nodes, nodes.Y, nodes.X.Count, (i, line) => nodes.Index(line, i), "y");
        List<Finding> findings = [];
        if (grid.HasUncertainty && alongX <= noiseX)
        {
            findings.Add(MapFindings.CurvatureWithinNoise("x", alongX, noiseX));
        }

        if (grid.HasUncertainty && alongY <= noiseY)
        {
            findings.Add(MapFindings.CurvatureWithinNoise("y", alongY, noiseY));
        }

        return new SurfaceCurvature(alongX, alongY, findings.AsReadOnly());
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Both curvatures.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"curvature up to {XInverseMeters:G3} 1/m along x, {YInverseMeters:G3} 1/m along y");

    /// <summary>The largest second difference, and what the largest of as many would come to by noise alone: √(2 ln 2n) standard uncertainties.</summary>
    private static (double Largest, double Noise) Largest(GridNodes nodes, GridAxis axis, int lines, Func<int, int, int> index, string name)
    {
        double largest = -1, uncertainty = 0;
        int count = 0;
        for (int line = 0; line < lines; line++)
        {
            for (int i = 1; i + 1 < axis.Count; i++)
            {
                (int a, int b, int c) = (index(i - 1, line), index(i, line), index(i + 1, line));
                if (nodes.Readings[a] == 0 || nodes.Readings[b] == 0 || nodes.Readings[c] == 0)
                {
                    continue;
                }

                double before = axis.Step(i - 1), after = axis.Step(i), reach = (before + after) / 2;
                double wa = 1 / (before * reach), wc = 1 / (after * reach), wb = -wa - wc;
                largest = Math.Max(largest, Math.Abs((wa * nodes.Heights[a]) + (wb * nodes.Heights[b]) + (wc * nodes.Heights[c])));
                uncertainty = Math.Max(uncertainty, Math.Sqrt(Square(wa * nodes.StandardUncertainties[a]) + Square(wb * nodes.StandardUncertainties[b]) + Square(wc * nodes.StandardUncertainties[c])));
                count++;
            }
        }

        return count > 0
            ? (largest, uncertainty * Math.Sqrt(2 * Math.Log(2 * count)))
            : throw Guard.Refused("grid", $"The grid has no three probed nodes in a row along {name}; a curvature needs them.");
    }

    private static double Square(double value) => value * value;
}
