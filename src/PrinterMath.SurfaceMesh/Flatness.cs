using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>How far a surface departs from a plane: peak-to-valley and root mean square about the least-squares plane, raw and corrected for probe noise.</summary>
/// <remarks>
/// <para>Heights are taken along z, not square to the plane; for the slopes of a print surface the difference is below one part in a thousand. What lies between
/// the points is not seen.</para>
/// <para>Noise widens a peak-to-valley: by 4 to 5 standard deviations on a flat surface of 25 to 100 points, hardly where one peak stands out. The model is z = shape + independent
/// normal noise; of the shape nothing is assumed. Seeded simulated noise gives two limits. Lower: means over circles of points have no wider range than the surface, so the range of such
/// means less what noise alone gives (jointly for four radii, from the single point up) is a lower limit, and the largest of the four is taken. Upper: the largest
/// peak-to-valley in two points alone that noise would let pass as the raw value or less; that is raw + z₁₋ₜ√2σ where the raw value is far above the noise. The corrected value is the middle of the limits,
/// its standard uncertainty half their distance over the normal quantile. The limits hold for any shape, and are cautious for most.</para>
/// Source: ISO 12781-1:2011 (least-squares reference plane; peak-to-valley and root mean square flatness deviation, from memory). The limits are this library's own, tested by simulation.
/// </remarks>
/// <example><code>
/// Flatness flatness = Flatness.Of(grid.Points, new FlatnessOptions { Seed = 1, Repeatability = Length.FromMicrometers(8) });
/// Verdict&lt;Length&gt; verdict = Tolerance.AtMost(Length.FromMillimeters(0.1)).Judge(flatness.PeakToValley);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Flatness
{
    private readonly PlaneDeviations? _raw;
    private readonly NoiseCorrection? _corrected;
    private readonly ReadOnlyCollection<Finding> _findings;

    private Flatness(PlaneDeviations? raw, NoiseCorrection? corrected, params Finding[] findings)
    {
        _raw = raw;
        _corrected = corrected;
        _findings = Array.AsReadOnly(findings);
    }

    /// <summary>What was noticed, see <see cref="SurfaceFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Peak-to-valley of the readings about their least-squares plane, noise included.</summary>
    /// <exception cref="IndeterminateException">The points determine no plane.</exception>
    public Length RawPeakToValley => Length.FromMeters(Raw.PeakToValley);

    /// <summary>Root mean square √(Σr²/n) of the readings about their least-squares plane, noise included.</summary>
    /// <exception cref="IndeterminateException">The points determine no plane.</exception>
    public Length RawRootMeanSquare => Length.FromMeters(Raw.RootMeanSquare);

    /// <summary>Peak-to-valley of the surface itself at the points, corrected for noise.</summary>
    /// <exception cref="IndeterminateException">The points determine no plane, or the repeatability is unknown.</exception>
    public Measured<Length> PeakToValley => Corrected.PeakToValley;

    /// <summary>Root mean square of the surface itself at the points, √(Σr²/n − noise), corrected for noise.</summary>
    /// <exception cref="IndeterminateException">The points determine no plane, or the repeatability is unknown.</exception>
    public Measured<Length> RootMeanSquare => Corrected.RootMeanSquare;

    /// <summary>Lower limit of the peak-to-valley at the stated coverage, zero or more.</summary>
    /// <exception cref="IndeterminateException">The points determine no plane, or the repeatability is unknown.</exception>
    public Length LowerLimit => Length.FromMeters(Corrected.Lower);

    /// <summary>Upper limit of the peak-to-valley at the stated coverage.</summary>
    /// <exception cref="IndeterminateException">The points determine no plane, or the repeatability is unknown.</exception>
    public Length UpperLimit => Length.FromMeters(Corrected.Upper);

    /// <summary>Index of the highest point above the plane among the points given.</summary>
    /// <exception cref="IndeterminateException">The points determine no plane.</exception>
    public int HighestPoint => Raw.Highest;

    /// <summary>Index of the lowest point below the plane among the points given.</summary>
    /// <exception cref="IndeterminateException">The points determine no plane.</exception>
    public int LowestPoint => Raw.Lowest;

    private PlaneDeviations Raw => _raw ?? throw new IndeterminateException(_findings[0]);

    private NoiseCorrection Corrected => _corrected ?? throw new IndeterminateException(_findings[0]);

    /// <summary>Flatness of points at any places.</summary>
    /// <param name="points">The points, four or more, not on one line.</param>
    /// <param name="options">Seed and repeatability.</param>
    /// <returns>The flatness; findings say when the data hold none.</returns>
    /// <exception cref="ArgumentException">There are no points, or they span no rectangle.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static Flatness Of(IReadOnlyList<ProbePoint> points, FlatnessOptions options)
    {
        Guard.NotNull(options);
        Guard.Between(options.Trials, 200, 1_000_000);
        Guard.StrictlyBetween(options.Coverage, 0, 1);
        ProbePoint[] copy = [.. Guard.NotNull(points)];
        PointNoise? noise = PointNoise.Of(copy, options.Repeatability, options.RepeatabilityDegreesOfFreedom);
        PlaneBasis basis = PlaneBasis.Of(copy);
        if (copy.Length < 4 || basis.Terms < 3)
        {
            return new Flatness(null, null, ShapeFindings.FlatnessUndetermined);
        }

        double[] residuals = [.. copy.Select(p => p.ZMeters)];
        basis.Remove(residuals);
        PlaneDeviations raw = PlaneDeviations.Of(residuals);
        if (noise is null)
        {
            return new Flatness(raw, null, ShapeFindings.RepeatabilityUnknown);
        }

        NoiseCorrection corrected = NoiseCorrection.Of(copy, residuals, raw, basis, noise, options);
        return corrected.ChanceIfFlat > 0.05
            ? new Flatness(raw, corrected, ShapeFindings.FlatWithinNoise(corrected.ChanceIfFlat))
            : new Flatness(raw, corrected);
    }

    /// <summary>Peak-to-valley corrected for noise, if the repeatability is known.</summary>
    /// <param name="peakToValley">The peak-to-valley, or the default.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetPeakToValley(out Measured<Length> peakToValley)
    {
        peakToValley = _corrected?.PeakToValley ?? default;
        return _corrected is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Raw and corrected peak-to-valley, or the finding that stands in their place.</returns>
    public override string ToString() => _raw is null ? _findings[0].ToString() : string.Create(
        CultureInfo.InvariantCulture,
        $"peak-to-valley {_raw.PeakToValley * 1e3:G4} mm raw{(_corrected is null ? string.Empty : $", {_corrected.PeakToValley} corrected")}");
}
