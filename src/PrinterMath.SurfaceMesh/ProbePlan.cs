using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>How many places to probe, and how often each, for a map that is good to a tolerance in the least time.</summary>
/// <remarks>
/// A grid of nₓ by n_y places with r readings each is good enough where (hₓ² κₓ + h_y² κ_y)/8 + k s/√r is within the tolerance: the bound of bilinear interpolation with the
/// largest curvatures κ, which holds on every surface that has no larger ones, and the expanded noise of a node, which between nodes is smaller. Of all such grids the one that takes
/// the least time, nₓ n_y (t + r t₁), is planned; of equal ones that with fewer places.
/// Source: the bound, de Boor 1978, A Practical Guide to Splines, chapter III (from memory), one axis after the other; s/√r, JCGM 100:2008, 4.2.3.
/// </remarks>
/// <example><code>
/// ProbePlan plan = ProbePlan.For(bed, SurfaceCurvature.Estimate(coarse), new ProbePlanOptions { Tolerance = Length.FromMicrometers(20), Repeatability = Length.FromMicrometers(3) });
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ProbePlan
{
    private readonly Finding? _obstacle;
    private readonly Grid _grid;

    private ProbePlan(SurfaceRectangle rectangle, Grid grid, Finding? obstacle)
    {
        Rectangle = rectangle;
        _grid = grid;
        _obstacle = obstacle;
    }

    /// <summary>The rectangle that is probed, its border included.</summary>
    public SurfaceRectangle Rectangle { get; }

    /// <summary>Whether the tolerance can be met at all.</summary>
    public bool IsFeasible => _obstacle is null;

    /// <summary>Empty, or why the tolerance cannot be met: <see cref="SurfaceFindings.PlanOutOfReach"/>.</summary>
    public IReadOnlyList<Finding> Findings => _obstacle is null ? [] : [_obstacle];

    /// <summary>Number of columns, along x.</summary>
    /// <exception cref="IndeterminateException">The tolerance cannot be met.</exception>
    public int Columns => Planned.Columns;

    /// <summary>Number of rows, along y.</summary>
    /// <exception cref="IndeterminateException">The tolerance cannot be met.</exception>
    public int Rows => Planned.Rows;

    /// <summary>Readings at each place.</summary>
    /// <exception cref="IndeterminateException">The tolerance cannot be met.</exception>
    public int ReadingsPerPlace => Planned.Readings;

    /// <summary>Bound of the interpolation, (hₓ² κₓ + h_y² κ_y)/8.</summary>
    /// <exception cref="IndeterminateException">The tolerance cannot be met.</exception>
    public Length InterpolationError => Length.FromMeters(Planned.Bend);

    /// <summary>Expanded noise of a node, k s/√r.</summary>
    /// <exception cref="IndeterminateException">The tolerance cannot be met.</exception>
    public Length ExpandedNoise => Length.FromMeters(Planned.Noise);

    /// <summary>Time that probing takes.</summary>
    /// <exception cref="IndeterminateException">The tolerance cannot be met.</exception>
    public Duration Duration => UnitsNet.Duration.FromSeconds(Planned.Seconds);

    /// <summary>The places, row by row from the front, every other row backwards so that travel is short.</summary>
    /// <exception cref="IndeterminateException">The tolerance cannot be met.</exception>
    public IReadOnlyList<SurfacePosition> Places
    {
        get
        {
            (int columns, int rows) = (Planned.Columns, Planned.Rows);
            SurfacePosition[] places = new SurfacePosition[columns * rows];
            for (int k = 0; k < places.Length; k++)
            {
                int row = k / columns, column = row % 2 == 0 ? k % columns : columns - 1 - (k % columns);
                places[k] = SurfacePosition.FromMeters(
                    Along(Rectangle.LeftMeters, Rectangle.RightMeters, column, columns), Along(Rectangle.FrontMeters, Rectangle.RearMeters, row, rows));
            }

            return Array.AsReadOnly(places);
        }
    }

    private Grid Planned => _obstacle is null ? _grid : throw new IndeterminateException(_obstacle);

    /// <summary>Plans the probing of a rectangle.</summary>
    /// <param name="rectangle">What is to be mapped; see <see cref="ProbeReach"/>.</param>
    /// <param name="curvature">The largest curvatures.</param>
    /// <param name="options">Tolerance, noise and time.</param>
    /// <returns>The plan; when no grid within the bounds is good enough, a finding says so.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static ProbePlan For(SurfaceRectangle rectangle, SurfaceCurvature curvature, ProbePlanOptions options)
    {
        Guard.NotNull(options).Check(nameof(options));
        double width = Guard.NotNull(rectangle).RightMeters - rectangle.LeftMeters, depth = rectangle.RearMeters - rectangle.FrontMeters;
        double bendX = Guard.NotNull(curvature).XInverseMeters * width * width / 8, bendY = curvature.YInverseMeters * depth * depth / 8;
        Grid? best = null;
        for (int readings = 1; readings <= options.MostReadings; readings++)
        {
            double noise = options.CoverageFactor * options.Repeatability.Meters / Math.Sqrt(readings), left = options.Tolerance.Meters - noise;
            double each = options.TimePerPlace.Seconds + (readings * options.TimePerReading.Seconds);
            for (int columns = 2; left > 0 && 2 * columns <= options.MostPlaces; columns++)
            {
                double alongX = bendX / ((columns - 1.0) * (columns - 1)), rest = left - alongX;
                double steps = bendY == 0 && rest >= 0 ? 1 : rest > 0 ? Math.Max(1, Math.Ceiling(Math.Sqrt(bendY / rest))) : double.PositiveInfinity;
                if ((steps + 1) * columns > options.MostPlaces)
                {
                    continue;
                }

                var grid = new Grid(columns, (int)steps + 1, readings, alongX + (bendY / (steps * steps)), noise, columns * (steps + 1) * each);
                best = best is null || grid.Seconds < best.Seconds || (grid.Seconds == best.Seconds && grid.Columns * grid.Rows < best.Columns * best.Rows) ? grid : best;
            }
        }

        return best is null
            ? new ProbePlan(rectangle, new Grid(0, 0, 0, 0, 0, 0), MapFindings.PlanOutOfReach(options))
            : new ProbePlan(rectangle, best, null);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The grid and what it is good for.</returns>
    public override string ToString() => _obstacle?.Message ?? string.Create(
        CultureInfo.InvariantCulture,
        $"{_grid.Columns} x {_grid.Rows} places, {_grid.Readings} reading(s) each: interpolation within {_grid.Bend * 1e6:0.##} µm, noise within {_grid.Noise * 1e6:0.##} µm, {_grid.Seconds:0} s");

    private static double Along(double from, double to, int step, int count) => step == count - 1 ? to : from + ((to - from) * step / (count - 1));

    private sealed record Grid(int Columns, int Rows, int Readings, double Bend, double Noise, double Seconds);
}
