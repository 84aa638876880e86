using System.Diagnostics;
using MathNet.Numerics.Distributions;
using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>A gauge study: operators (or probes) read several places (or parts) several times each, all crossed.</summary>
/// <remarks>
/// <para>Range method: σ(repeatability) = R̄/d₂(trials); σ²(reproducibility) = (range of operator means/d₂*)² − σ²(repeatability)/(places·trials); σ(places) = range of place means/d₂*.
/// d₂ and d₂* are computed, not rounded: K₁ = 1/d₂, K₂ and K₃ = 1/d₂*.</para>
/// <para>Analysis of variance: mean squares of operators, places, their interaction and the repetitions; an interaction that is not significant at 25 % is pooled with the
/// repetitions. Limits by the modified large-sample method; of a share that is given as zero the upper limit still says what it may be.</para>
/// <para>One operator alone shows no reproducibility: the gauge is then its repeatability, and the analysis of variance is that of one factor.</para>
/// <para>Findings of the results: <c>gauge.interaction.pooled</c>, <c>gauge.variance.negative</c>, <c>gauge.operators.one</c> (notes), <c>gauge.categories.few</c>, <c>gauge.unit.suspect</c> (cautions).</para>
/// <para>Source: Automotive Industry Action Group 2010, Measurement Systems Analysis, 4th ed., chapter III, section B (average and range method, analysis of variance); ISO 22514-7 (from memory).</para>
/// </remarks>
/// <example><code>
/// GaugeStudy study = GaugeStudy.OfMeters(readings, places: 10, operators: 3, trials: 3);
/// double share = study.ByAnova().Gauge.ShareOfTolerance(Length.FromMillimeters(0.1));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class GaugeStudy
{
    /// <summary>Interactions less likely by chance than this are kept. Common practice, AIAG 2010.</summary>
    private const double PoolingRisk = 0.25;

    /// <summary>Ranges below this fraction of the readings are rounding of the numbers.</summary>
    private const double Rounding = 1e-13;

    private readonly GaugeTable _table;

    private GaugeStudy(double[] readings, int places, int operators, int trials)
    {
        _table = new GaugeTable(readings, places, operators, trials);
        Places = places;
        Operators = operators;
        Trials = trials;
    }

    /// <summary>Number of places or parts.</summary>
    public int Places { get; }

    /// <summary>Number of operators or probes.</summary>
    public int Operators { get; }

    /// <summary>Readings of each operator at each place.</summary>
    public int Trials { get; }

    /// <summary>A study from readings in metres.</summary>
    /// <param name="readings">Readings in metres, operator by operator; within an operator trial by trial; within a trial place by place.</param>
    /// <param name="places">Number of places, from 2 to 100.</param>
    /// <param name="operators">Number of operators or probes, from 1 to 100; several show their reproducibility.</param>
    /// <param name="trials">Readings of each operator at each place, from 2 to 100.</param>
    /// <returns>The study.</returns>
    /// <exception cref="ArgumentException">The number of readings is not places × operators × trials, or repeated readings are all alike.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range or not finite.</exception>
    public static GaugeStudy OfMeters(ReadOnlySpan<double> readings, int places, int operators, int trials)
    {
        Guard.Between(places, 2, 100);
        Guard.Between(operators, 1, 100);
        Guard.Between(trials, 2, 100);
        Guard.AllFinite(readings);
        if (readings.Length != places * operators * trials)
        {
            throw Guard.Refused(nameof(readings), $"There are {readings.Length} readings; {places} places, {operators} operators and {trials} trials need {places * operators * trials}.");
        }

        double[] copy = readings.ToArray();
        double largest = Math.Max(Math.Abs(copy.Max()), Math.Abs(copy.Min()));
        var study = new GaugeStudy(copy, places, operators, trials);
        return study._table.MeanRange() > Rounding * largest
            ? study
            : throw Guard.Refused(nameof(readings), RepeatabilityFindings.Degenerate().Message);
    }

    /// <summary>Components from ranges.</summary>
    /// <returns>The components, without limits.</returns>
    public GaugeResult ByRange()
    {
        double repeatability = Math.Pow(_table.MeanRange() / RangeDistribution.Mean(Trials), 2);
        double place = Math.Pow(GaugeTable.RangeOf(_table.PlaceMean, Places) / RangeDistribution.RootMeanSquare(Places), 2);
        if (Operators == 1)
        {
            return Result(GaugeMethod.Range, repeatability, null, place, [null, null, null, null, null], null);
        }

        double between = Math.Pow(GaugeTable.RangeOf(_table.OperatorMean, Operators) / RangeDistribution.RootMeanSquare(Operators), 2) - (repeatability / (Places * Trials));
        double reproducibility = Math.Max(0, between);
        return Result(GaugeMethod.Range, repeatability, reproducibility, place, [null, null, null, null, null], null, between < 0 ? RepeatabilityFindings.Negative("reproducibility") : null);
    }

    /// <summary>Components from the analysis of variance.</summary>
    /// <returns>The components, with limits.</returns>
    public GaugeResult ByAnova()
    {
        if (Operators == 1)
        {
            return ByAnovaOfOne();
        }

        GaugeSquares s = _table.Squares();
        double n = Places * Trials, m = Operators * Trials;
        double f = s.Interaction.Value / s.Error.Value;
        double chance = 1 - FisherSnedecor.CDF(s.Interaction.DegreesOfFreedom, s.Error.DegreesOfFreedom, f);
        bool pool = chance > PoolingRisk;
        MeanSquare error = pool ? s.Pooled : s.Error;
        MeanSquare against = pool ? error : s.Interaction;
        double interaction = pool ? 0 : (against.Value - error.Value) / Trials;
        double operators = (s.Operators.Value - against.Value) / n;
        double place = (s.Places.Value - against.Value) / m;

        // Every component as factors of (error, interaction or none, operators, places).
        double t = pool ? 0 : 1.0 / Trials;
        double ownOperators = operators > 0 ? 1 / n : 0, ownPlaces = place > 0 ? 1 / m : 0;
        (double, double)? reproducibility = Limits(-t, t - (1 / n), 1 / n, 0);
        (double, double)?[] limits =
        [
            Limits(1, 0, 0, 0),
            reproducibility,
            Limits(1 - t, t - ownOperators, ownOperators, 0),
            Limits(0, -1 / m, 0, 1 / m),
            Limits(1 - t, t - ownOperators - ownPlaces, ownOperators, ownPlaces),
        ];
        return Result(
            GaugeMethod.Anova,
            error.Value,
            Math.Max(0, interaction) + Math.Max(0, operators),
            Math.Max(0, place),
            limits,
            f,
            pool ? RepeatabilityFindings.Pooled(chance) : null,
            operators < 0 ? RepeatabilityFindings.Negative("reproducibility") : null,
            place < 0 ? RepeatabilityFindings.Negative("places") : null);

        (double, double)? Limits(double e, double i, double o, double p) => pool
            ? VarianceLimits.Of(error with { Factor = e + i }, s.Operators with { Factor = o }, s.Places with { Factor = p })
            : VarianceLimits.Of(error with { Factor = e }, s.Interaction with { Factor = i }, s.Operators with { Factor = o }, s.Places with { Factor = p });
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The size of the study.</returns>
    public override string ToString() => $"{Places} places, {Operators} operators, {Trials} trials";

    /// <summary>One factor: σ²(places) = (MS(places) − MS(repetitions))/trials.</summary>
    private GaugeResult ByAnovaOfOne()
    {
        double mean = _table.OperatorMean(0), between = 0, within = 0;
        for (int p = 0; p < Places; p++)
        {
            double cell = _table.CellMean(0, p);
            between += Math.Pow(cell - mean, 2) * Trials / (Places - 1);
            for (int t = 0; t < Trials; t++)
            {
                within += Math.Pow(_table.At(0, t, p) - cell, 2) / (Places * (Trials - 1));
            }
        }

        double place = (between - within) / Trials, own = place > 0 ? 1.0 / Trials : 0;
        var error = new MeanSquare(1, within, Places * (Trials - 1));
        var places = new MeanSquare(1, between, Places - 1);
        (double, double) repeatability = VarianceLimits.Of(error);
        return Result(
            GaugeMethod.Anova,
            within,
            null,
            Math.Max(0, place),
            [
                repeatability,
                null,
                repeatability,
                VarianceLimits.Of(error with { Factor = -1.0 / Trials }, places with { Factor = 1.0 / Trials }),
                VarianceLimits.Of(error with { Factor = 1 - own }, places with { Factor = own }),
            ],
            null,
            place < 0 ? RepeatabilityFindings.Negative("places") : null);
    }

    private static GaugeResult Result(
        GaugeMethod method, double repeatability, double? reproducibility, double place, (double, double)?[] limits, double? interactionF, params Finding?[] findings)
    {
        double gauge = repeatability + (reproducibility ?? 0);
        double total = gauge + place;
        int categories = (int)Math.Min(1e6, 1.41 * Math.Sqrt(place / gauge));
        return new GaugeResult(
            method,
            new GaugeComponent("repeatability", repeatability, total, limits[0]),
            reproducibility is double r ? new GaugeComponent("reproducibility", r, total, limits[1]) : null,
            new GaugeComponent("gauge", gauge, total, limits[2]),
            new GaugeComponent("places", place, total, limits[3]),
            new GaugeComponent("total", total, total, limits[4]),
            interactionF,
            [reproducibility is null ? RepeatabilityFindings.OneOperator() : null, .. findings, RepeatabilityFindings.Units("gauge.unit.suspect", Math.Sqrt(repeatability)), categories < 5 ? RepeatabilityFindings.FewCategories(Math.Max(1, categories)) : null]);
    }
}
