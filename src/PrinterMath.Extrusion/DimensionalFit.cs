using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>Scale and boundary offsets of one axis, from printed lengths measured against exact nominal lengths.</summary>
/// <remarks>
/// <para>Measured minus nominal = s·L + 2·c_out for outer, s·L − 2·c_in for inner features, s·L for centre distances, by least squares weighted with 1/u². Signs: s is
/// positive when parts come out too long, c_out when outer faces lie too far out, c_in when inner faces lie too far in, so that holes come out too small: a
/// bead that is too wide makes both offsets positive.</para>
/// <para>u: from the stated uncertainties alone, enlarged by the Birge ratio where that is above 1. When χ² passes its quantile the enlarged u has the
/// degrees of freedom of the residuals and a finding says so.</para>
/// <para>Shrinkage depends on shape and infill: measure parts like those that count, cooled, and do not extrapolate. Source: JCGM 100:2008, H.3;
/// least squares as cited at <see cref="LinearLeastSquares"/>.</para>
/// </remarks>
/// <example><code>
/// DimensionalFit x = DimensionalFit.For(PrintAxis.X, features);
/// if (x.TryGetScale(out Measured&lt;double&gt; s)) { Console.WriteLine($"{s}; holes {x.InnerOffset}; multiply the model by {x.ScaleCompensation}"); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class DimensionalFit
{
    private const string Scaling = "scale", Outer = "outer offset", Inner = "inner offset";
    private readonly ReadOnlyCollection<Finding> _findings;
    private readonly JointEstimate? _joint;

    private DimensionalFit(PrintAxis axis, int features, JointEstimate? joint, double? birge, IEnumerable<Finding> findings)
    {
        Axis = axis;
        FeatureCount = features;
        _joint = joint;
        BirgeRatio = birge;
        _findings = findings.ToList().AsReadOnly();
    }

    /// <summary>The axis.</summary>
    public PrintAxis Axis { get; }

    /// <summary>Number of features of this axis.</summary>
    public int FeatureCount { get; }

    /// <summary>What was noticed, see <see cref="ExtrusionFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>√(χ²/ν): near 1 when scatter and stated uncertainties agree; null when nothing checks the fit.</summary>
    public double? BirgeRatio { get; }

    /// <summary>Scale and those offsets that the features show, with their covariance; names <c>scale</c>, <c>outer offset</c>, <c>inner offset</c>.</summary>
    /// <exception cref="IndeterminateException">The features cannot tell them apart.</exception>
    public JointEstimate Joint => _joint ?? throw new IndeterminateException(_findings.First(f => f.Severity == FindingSeverity.Blocking));

    /// <summary>Relative scale error s of the axis, a ratio: positive when parts come out too long.</summary>
    /// <exception cref="IndeterminateException">The features cannot tell scale and offsets apart.</exception>
    public Measured<double> Scale => Joint.Estimate<double>(0);

    /// <summary>Offset c_out of outer faces: positive when they lie too far out.</summary>
    /// <exception cref="IndeterminateException">No outer feature, or scale and offsets cannot be told apart.</exception>
    public Measured<Length> OuterOffset => Joint.Estimate<Length>(Index(Outer));

    /// <summary>Offset c_in of inner faces: positive when they lie too far in and holes come out too small.</summary>
    /// <exception cref="IndeterminateException">No inner feature, or scale and offsets cannot be told apart.</exception>
    public Measured<Length> InnerOffset => Joint.Estimate<Length>(Index(Inner));

    /// <summary>Factor on the model that cancels the scale error, 1/(1 + s).</summary>
    /// <exception cref="IndeterminateException">The features cannot tell scale and offsets apart.</exception>
    public Measured<double> ScaleCompensation => Propagation.FirstOrder<double>(x => 1 / (1 + x[0]), Joint.Inputs, Joint.Correlations).Result;

    /// <summary>Shift of outer faces in the model, after scaling it, that cancels their offset, −c_out/(1 + s): positive is outward.</summary>
    /// <exception cref="IndeterminateException">No outer feature, or scale and offsets cannot be told apart.</exception>
    public Measured<Length> OuterCompensation => Compensation(Index(Outer));

    /// <summary>Shift of inner faces in the model, after scaling it, that cancels their offset, −c_in/(1 + s): positive is into the hole, which makes it smaller.</summary>
    /// <exception cref="IndeterminateException">No inner feature, or scale and offsets cannot be told apart.</exception>
    public Measured<Length> InnerCompensation => Compensation(Index(Inner));

    /// <summary>Fits one axis.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="features">Features; those of other axes are left out.</param>
    /// <param name="options">Instrument and significance; null for the defaults.</param>
    /// <returns>The fit; when the features cannot tell the unknowns apart, its findings say why.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No feature of this axis, or an option out of range.</exception>
    public static DimensionalFit For(PrintAxis axis, IReadOnlyList<PrintedFeature> features, DimensionalFitOptions? options = null)
    {
        options ??= new DimensionalFitOptions();
        Guard.NonNegative(options.InstrumentScaleUncertainty);
        Guard.StrictlyBetween(options.Significance, 0, 0.5);
        PrintedFeature[] own = [.. Guard.NotNull(features).Where(feature => feature.Axis == axis)];
        Guard.AtLeast(own.Length, 1, nameof(features));
        bool hasOuter = own.Any(f => f.Kind == FeatureKind.Outer), hasInner = own.Any(f => f.Kind == FeatureKind.Inner);
        string[] names = [Scaling, .. hasOuter ? (string[])[Outer] : [], .. hasInner ? (string[])[Inner] : []];
        double[] design = [.. own.SelectMany(f => Row(f, hasOuter, hasInner))];
        LinearFit fit = LinearLeastSquares.Fit(
            design,
            names.Length,
            [.. own.Select(f => f.Deviation)],
            [.. own.Select(f => f.Measured.SiStandardUncertainty)],
            new LinearFitOptions { Intercept = false });
        return DimensionalChecks.NotSeparable(own, fit) is { } finding
            ? new DimensionalFit(axis, own.Length, null, null, [finding, .. DimensionalChecks.Plausibility(own)])
            : FromFit(axis, own, fit, names, options);
    }

    /// <summary>Deviation, measured minus nominal, to expect of a feature that was not measured.</summary>
    /// <param name="kind">What the length lies between.</param>
    /// <param name="nominal">Nominal length, greater than zero.</param>
    /// <returns>The expected deviation; the scatter of single prints is not in its uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is not positive, or the kind is not one of those named.</exception>
    /// <exception cref="IndeterminateException">No feature of that kind, or scale and offsets cannot be told apart.</exception>
    public Measured<Length> DeviationOf(FeatureKind kind, Length nominal)
    {
        double length = Guard.Positive(nominal.Meters, nameof(nominal));
        (int index, double sign) = kind switch
        {
            FeatureKind.Outer => (Index(Outer), 2.0),
            FeatureKind.Inner => (Index(Inner), -2.0),
            FeatureKind.CenterDistance => (0, 0.0),
            _ => throw Guard.Out(nameof(kind), kind, "one of the named kinds"),
        };
        double[] sensitivities = new double[Joint.Count];
        sensitivities[index] = sign;
        sensitivities[0] = length;
        double value = (length * Scale.SiValue) + (sign == 0 ? 0 : sign * Joint.Inputs[index].SiValue);
        return Propagation.FirstOrder<Length>(value, Joint.Inputs, sensitivities, Joint.Correlations).Result;
    }

    /// <summary>The scale error, if the features show it.</summary>
    /// <param name="scale">The scale error, or the default.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetScale(out Measured<double> scale)
    {
        scale = _joint is null ? default : Scale;
        return _joint is not null;
    }

    /// <summary>The offset of outer faces, if the features show it.</summary>
    /// <param name="offset">The offset, or the default.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetOuterOffset(out Measured<Length> offset) => TryGet(Outer, out offset);

    /// <summary>The offset of inner faces, if the features show it.</summary>
    /// <param name="offset">The offset, or the default.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetInnerOffset(out Measured<Length> offset) => TryGet(Inner, out offset);

    /// <summary>Invariant text.</summary>
    /// <returns>The estimates, or the finding that stands in their place.</returns>
    public override string ToString() => $"{Axis}: {_joint?.ToString() ?? _findings[0].ToString()}";

    private static DimensionalFit FromFit(PrintAxis axis, PrintedFeature[] own, LinearFit fit, string[] names, DimensionalFitOptions options)
    {
        List<Finding> findings = [.. DimensionalChecks.Plausibility(own), .. DimensionalChecks.Separation(fit, names)];
        double? birge = fit.TryGetResidualStandardDeviation(out double ratio) ? ratio : null;
        Finding? scatter = DimensionalChecks.Scatter(fit, options.Significance);
        findings.AddRange(scatter is null ? [] : [scatter]);
        findings.AddRange(birge is null ? [DimensionalChecks.Unchecked(own.Length)] : []);
        double enlarged = Math.Max(1, birge ?? 1);
        double[] covariance = new double[names.Length * names.Length];
        for (int i = 0; i < covariance.Length; i++)
        {
            covariance[i] = fit.Covariance(i / names.Length, i % names.Length) * enlarged * enlarged;
        }

        covariance[0] += options.InstrumentScaleUncertainty * options.InstrumentScaleUncertainty;
        return new DimensionalFit(axis, own.Length, JointEstimate.FromSi(
            names,
            [.. names.Select((_, i) => i == 0 ? Measured<double>.UcumUnit : Measured<Length>.UcumUnit)],
            [.. fit.Coefficients],
            covariance,
            scatter is null ? double.PositiveInfinity : fit.DegreesOfFreedom), birge, findings);
    }

    private static IEnumerable<double> Row(PrintedFeature feature, bool hasOuter, bool hasInner)
    {
        yield return feature.NominalMeters;
        if (hasOuter)
        {
            yield return feature.Kind == FeatureKind.Outer ? 2 : 0;
        }

        if (hasInner)
        {
            yield return feature.Kind == FeatureKind.Inner ? -2 : 0;
        }
    }

    private Measured<Length> Compensation(int index) =>
        Propagation.FirstOrder<Length>(x => -x[index] / (1 + x[0]), Joint.Inputs, Joint.Correlations).Result;

    private int Index(string name)
    {
        int index = Joint.Names.ToList().IndexOf(name);
        return index >= 0 ? index : throw new IndeterminateException($"No feature of the {Axis} axis shows the {name}.");
    }

    private bool TryGet(string name, out Measured<Length> offset)
    {
        bool known = _joint is not null && _joint.Names.Contains(name);
        offset = known ? Joint.Estimate<Length>(Index(name)) : default;
        return known;
    }
}
