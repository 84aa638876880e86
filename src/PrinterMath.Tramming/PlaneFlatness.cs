using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>How far a surface departs from a plane at the points probed: peak-to-valley and root mean square about the least-squares plane, and minimum zone, each raw and corrected for probe noise.</summary>
/// <remarks>
/// <para>Noise widens what is read: a perfect bed read with noise s shows a peak-to-valley of about 3.8 s at 25 points and 4.9 s at 100. The corrected value is the size of the surface at which
/// simulated readings exceed the raw value half of the time; the limits are the sizes at which they do so with the stated chance. The shape of the surface is not known, so the
/// residuals as read, the extreme points alone and two plateaus are tried, the mean of the estimates and the highest upper limit taken; the lower limit, raw less what noise alone shows, holds for any shape (parametric bootstrap with test inversion; this
/// library's own, tested by simulation: limits at 95 % held in 95 % or more, the mean error within about one noise standard deviation).</para>
/// <para>Planes are unweighted, as the standard has them; heights are taken along z, for a bed the same as square to the plane to 1 part in 10 000. What lies between the points is not seen.</para>
/// <para>Findings: <c>plane.collinear</c> (blocking), <c>flatness.repeatability.unknown</c> (blocking for the corrected values), <c>flatness.withinNoise</c> (note: a perfect plane would
/// show as much), <c>plane.unit.suspect</c> (caution).</para>
/// <para>Source: ISO 12781-1:2011, least-squares and minimum zone reference planes, peak-to-valley and root mean square deviations (from memory); Efron, Tibshirani 1993, An
/// Introduction to the Bootstrap, chapters 12 and 21 (from memory).</para>
/// </remarks>
/// <example><code>
/// PlaneFlatness flatness = PlaneFlatness.Of(points, new PlaneFlatnessOptions { Seed = 1, ProbeRepeatability = Length.FromMicrometers(4) });
/// Verdict&lt;Length&gt; verdict = flatness.Judge(Tolerance.AtMost(Length.FromMillimeters(0.1)));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PlaneFlatness
{
    /// <summary>A shape of which less than this is left beside its plane is that plane and rounding.</summary>
    private const double LeastShape = 1e-9;

    private readonly FlatnessDeviation? _peakToValley;
    private readonly FlatnessDeviation? _rootMeanSquare;
    private readonly FlatnessDeviation? _minimumZone;
    private readonly Finding[] _findings;

    private PlaneFlatness(FlatnessDeviation? peakToValley, FlatnessDeviation? rootMeanSquare, FlatnessDeviation? minimumZone, params Finding?[] findings)
    {
        _peakToValley = peakToValley;
        _rootMeanSquare = rootMeanSquare;
        _minimumZone = minimumZone;
        _findings = [.. findings.OfType<Finding>()];
    }

    /// <summary>What was noticed.</summary>
    public IReadOnlyList<Finding> Findings => Array.AsReadOnly(_findings);

    /// <summary>Whether the points fix a plane.</summary>
    public bool IsDeterminate => _peakToValley is not null;

    /// <summary>Highest minus lowest residual about the least-squares plane.</summary>
    /// <exception cref="IndeterminateException">The points lie in one line.</exception>
    public FlatnessDeviation PeakToValley => _peakToValley ?? throw Indeterminate();

    /// <summary>Root mean square of the residuals about the least-squares plane, √(Σr²/n).</summary>
    /// <exception cref="IndeterminateException">The points lie in one line.</exception>
    public FlatnessDeviation RootMeanSquare => _rootMeanSquare ?? throw Indeterminate();

    /// <summary>Width of the narrowest zone in z; see <see cref="Tramming.MinimumZone"/>.</summary>
    /// <exception cref="IndeterminateException">The points lie in one line.</exception>
    public FlatnessDeviation MinimumZone => _minimumZone ?? throw Indeterminate();

    /// <summary>Flatness of the surface at the points.</summary>
    /// <param name="points">At least four probe points.</param>
    /// <param name="options">Seed and repeatability.</param>
    /// <returns>The flatness, or a result whose findings say what the points lack.</returns>
    /// <exception cref="ArgumentException">Fewer than four points.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static PlaneFlatness Of(IReadOnlyList<ProbePoint> points, PlaneFlatnessOptions options)
    {
        ProbePoint[] copy = [.. Guard.NotNull(points)];
        if (copy.Length < 4)
        {
            throw Guard.Refused(nameof(points), $"There are {copy.Length} probe points; three always lie in a plane, so flatness needs at least 4.");
        }

        double placement = Guard.NonNegative(Guard.NotNull(options).PlacementUncertainty.Meters, "options.PlacementUncertainty");
        Guard.Between(options.Coverage, 0.5, 0.999, "options.Coverage");
        Guard.Between(options.Trials, PlaneFlatnessOptions.FewestTrials, 100_000, "options.Trials");
        Guard.Between(options.MostReadings, 1, int.MaxValue, "options.MostReadings");
        Guard.DegreesOfFreedom(options.RepeatabilityDegreesOfFreedom, "options.RepeatabilityDegreesOfFreedom");
        double repeatability = ProbeLimits.Repeatability(options.ProbeRepeatability, "options.ProbeRepeatability");
        if (ZoneFrame.Of(copy, placement, out Finding? blocking) is not ZoneFrame frame)
        {
            return new PlaneFlatness(null, null, null, blocking);
        }

        var zone = new MinimaxPlane(frame.U, frame.V);
        double[] residuals = [.. frame.R.Select(r => r * frame.Scale)];
        Finding? units = UnitSuspicion.Of(frame.Axes, frame.Plane, FlatnessMeasures.PeakToValley(residuals));
        if (repeatability == 0 && !copy.All(p => p.HasUncertainty))
        {
            Finding unknown = PlaneFindings.RepeatabilityUnknown();
            return new PlaneFlatness(
                new FlatnessDeviation(FlatnessMeasures.PeakToValley(residuals), null, unknown),
                new FlatnessDeviation(FlatnessMeasures.RootMeanSquare(residuals), null, unknown),
                new FlatnessDeviation(FlatnessMeasures.ZoneWidth(residuals, zone), null, unknown),
                unknown,
                units);
        }

        double[] uncertainties = [.. copy.Select(p => p.HasUncertainty ? p.StandardUncertaintyMeters : repeatability)];
        double[][] noise = SimulatedNoise.Residuals(frame, uncertainties, options);
        double read = FlatnessMeasures.PeakToValley(residuals);
        double flat = noise.Count(trial => FlatnessMeasures.PeakToValley(trial) >= read) / (double)noise.Length;
        return new PlaneFlatness(
            Correct(new PeakToValleyMeasure(), residuals, FlatnessMeasures.Extremes(residuals), FlatnessMeasures.Plateaus(residuals)),
            Correct(new RootMeanSquareMeasure(), residuals),
            Correct(new MinimumZoneMeasure(zone), residuals, FlatnessMeasures.Pins(residuals, zone), FlatnessMeasures.Plateaus(residuals)),
            flat > 0.05 ? PlaneFindings.WithinNoise(flat) : null,
            noise.Length < options.Trials ? PlaneFindings.FewerTrials(noise.Length, options.Trials, copy.Length) : null,
            units);

        FlatnessDeviation Correct(FlatnessMeasure measure, params double[][] candidates)
        {
            double raw = measure.Of(residuals);
            var shapes = new List<double[]>();
            foreach (double[] shape in candidates)
            {
                Add(shape);
            }

            // Readings without any departure have no shape of their own: one point out of plane stands in.
            for (int i = 0; i < residuals.Length && shapes.Count == 0; i++)
            {
                double[] spike = new double[residuals.Length];
                spike[i] = 1;
                Add(spike);
            }

            return new FlatnessDeviation(raw, NoiseInversion.Of(raw, shapes, noise, measure, options.Coverage), null);

            void Add(double[] shape)
            {
                double[] unit = [.. shape];
                SimulatedNoise.RemovePlane(unit, frame);
                double size = measure.Of(unit);
                if (size > LeastShape * shape.Max(Math.Abs))
                {
                    shapes.Add([.. unit.Select(r => r / size)]);
                }
            }
        }
    }

    /// <summary>Judges the corrected peak-to-valley against a tolerance at a specific risk of 5 %.</summary>
    /// <param name="tolerance">The limit.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="IndeterminateException">The points lie in one line, or the repeatability is not known.</exception>
    public Verdict<Length> Judge(Tolerance<Length> tolerance) => Guard.NotNull(tolerance).Judge(PeakToValley.Corrected);

    /// <summary>Invariant text.</summary>
    /// <returns>Peak-to-valley and minimum zone, or what the points lack.</returns>
    public override string ToString() => IsDeterminate
        ? $"peak-to-valley {PeakToValley}, minimum zone {MinimumZone}"
        : _findings[0].ToString();

    private IndeterminateException Indeterminate() => new(_findings[0]);
}
