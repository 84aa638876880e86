using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

public sealed class DimensionalFitTests
{
    private const double Scale = -0.004, OuterOffset = 0.05, InnerOffset = 0.08;

    [Fact]
    public void Planted_scale_and_offsets_come_back_exactly()
    {
        DimensionalFit fit = DimensionalFit.For(PrintAxis.X, Exactly());
        Assert.Equal(Scale, fit.Scale.SiValue, 1e-12);
        Assert.Equal(OuterOffset, fit.OuterOffset.Value.Millimeters, 1e-10);
        Assert.Equal(InnerOffset, fit.InnerOffset.Value.Millimeters, 1e-10);
        Assert.Equal(1 / 0.996, fit.ScaleCompensation.SiValue, 1e-11);
        Assert.Equal(-OuterOffset / 0.996, fit.OuterCompensation.Value.Millimeters, 1e-10);
        Assert.Equal(-InnerOffset / 0.996, fit.InnerCompensation.Value.Millimeters, 1e-10);
        Assert.Empty(fit.Findings);
    }

    [Fact]
    public void A_compensated_model_comes_out_true()
    {
        DimensionalFit fit = DimensionalFit.For(PrintAxis.X, Exactly());
        const double Nominal = 33;
        double outerModel = (Nominal * fit.ScaleCompensation.SiValue) + (2 * fit.OuterCompensation.Value.Millimeters);
        double innerModel = (Nominal * fit.ScaleCompensation.SiValue) - (2 * fit.InnerCompensation.Value.Millimeters);
        Assert.Equal(Nominal, (outerModel * (1 + Scale)) + (2 * OuterOffset), 1e-9);
        Assert.Equal(Nominal, (innerModel * (1 + Scale)) - (2 * InnerOffset), 1e-9);
    }

    [Fact]
    public void Deviations_are_predicted_with_their_covariance()
    {
        DimensionalFit fit = DimensionalFit.For(PrintAxis.X, Exactly());
        Measured<Length> inner = fit.DeviationOf(FeatureKind.Inner, Length.FromMillimeters(30));
        Assert.Equal((Scale * 30) - (2 * InnerOffset), inner.Value.Millimeters, 1e-10);
        JointEstimate joint = fit.Joint;
        double variance = (0.03 * 0.03 * joint.Covariance(0, 0)) + (4 * joint.Covariance(2, 2)) - (2 * 2 * 0.03 * joint.Covariance(0, 2));
        Assert.Equal(Math.Sqrt(variance), inner.SiStandardUncertainty, 1e-12);
        Assert.Equal(Scale * 30, fit.DeviationOf(FeatureKind.CenterDistance, Length.FromMillimeters(30)).Value.Millimeters, 1e-10);
    }

    // s alone from one centre distance: u(s) = u/L.
    [Fact]
    public void A_single_centre_distance_gives_the_scale_and_nothing_checks_it()
    {
        DimensionalFit fit = DimensionalFit.For(PrintAxis.Y, [Feature(FeatureKind.CenterDistance, 100, 99.6, PrintAxis.Y)]);
        Assert.Equal(-0.004, fit.Scale.SiValue, 1e-12);
        Assert.Equal(0.02 / 100, fit.Scale.SiStandardUncertainty, 1e-12);
        Assert.Null(fit.BirgeRatio);
        Assert.Equal(ExtrusionFindings.DimensionUnchecked, Assert.Single(fit.Findings).Code);
        Assert.False(fit.TryGetOuterOffset(out _));
        Assert.Throws<IndeterminateException>(() => fit.InnerOffset);
    }

    [Fact]
    public void Outer_features_of_one_length_cannot_tell_scale_from_offset()
    {
        DimensionalFit fit = DimensionalFit.For(
            PrintAxis.X, [Feature(FeatureKind.Outer, 20, 20.02), Feature(FeatureKind.Outer, 20, 20.03), Feature(FeatureKind.Outer, 20, 20.01)]);
        Assert.Equal(ExtrusionFindings.DimensionNotSeparable, Assert.Throws<IndeterminateException>(() => fit.Scale).Finding!.Code);
        Assert.False(fit.TryGetScale(out _));
        Assert.Contains("cannot tell", fit.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Lengths_nearly_alike_are_said_to_separate_poorly() =>
        Assert.Contains(
            DimensionalFit.For(PrintAxis.X, [Feature(FeatureKind.Outer, 20, 20.02), Feature(FeatureKind.Outer, 21, 21.02), Feature(FeatureKind.Outer, 20.5, 20.52)]).Findings,
            f => f.Code == ExtrusionFindings.DimensionPoorlySeparated);

    [Fact]
    public void One_misread_feature_widens_the_result_and_is_said()
    {
        PrintedFeature[] features = [.. Exactly(), Feature(FeatureKind.Outer, 45, 45.6)];
        DimensionalFit fit = DimensionalFit.For(PrintAxis.X, features);
        Assert.Contains(fit.Findings, f => f.Code == ExtrusionFindings.DimensionScatter);
        Assert.True(fit.Scale.SiStandardUncertainty > 3 * DimensionalFit.For(PrintAxis.X, Exactly()).Scale.SiStandardUncertainty);
    }

    [Fact]
    public void A_wrong_unit_is_noticed() =>
        Assert.Contains(
            DimensionalFit.For(PrintAxis.X, [.. Exactly(), Feature(FeatureKind.Outer, 25.4, 1)]).Findings, f => f.Code == ExtrusionFindings.DimensionImplausible);

    [Fact]
    public void The_instruments_scale_goes_into_the_scale_in_full()
    {
        double without = DimensionalFit.For(PrintAxis.X, Exactly()).Scale.SiStandardUncertainty;
        double with = DimensionalFit.For(PrintAxis.X, Exactly(), new DimensionalFitOptions { InstrumentScaleUncertainty = 0.001 }).Scale.SiStandardUncertainty;
        Assert.Equal(Math.Sqrt((without * without) + 1e-6), with, 1e-12);
    }

    [Fact]
    public void Axes_are_kept_apart_and_order_does_not_matter()
    {
        PrintedFeature[] features = [.. Exactly(), Feature(FeatureKind.Outer, 40, 47, PrintAxis.Y)];
        DimensionalFit fit = DimensionalFit.For(PrintAxis.X, [.. Enumerable.Reverse(features)]);
        Assert.Equal(7, fit.FeatureCount);
        Assert.Equal(DimensionalFit.For(PrintAxis.X, features).Scale.SiValue, fit.Scale.SiValue, 1e-14);
    }

    [Fact]
    public void Refuses_what_cannot_be()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => DimensionalFit.For(PrintAxis.Z, Exactly()));
        Assert.Throws<ArgumentOutOfRangeException>(() => Feature(FeatureKind.Outer, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PrintedFeature.Of(
            FeatureKind.Outer, PrintAxis.X, Length.FromMillimeters(1), Measured.Exact(Length.FromMillimeters(1))));
        Assert.Throws<ArgumentOutOfRangeException>(() => Feature((FeatureKind)9, 1, 1));
    }

    private static PrintedFeature[] Exactly() =>
    [
        .. new[] { 10.0, 40, 80 }.Select(length => Feature(FeatureKind.Outer, length, (length * (1 + Scale)) + (2 * OuterOffset))),
        .. new[] { 8.0, 30, 70 }.Select(length => Feature(FeatureKind.Inner, length, (length * (1 + Scale)) - (2 * InnerOffset))),
        Feature(FeatureKind.CenterDistance, 100, 100 * (1 + Scale)),
    ];

    private static PrintedFeature Feature(FeatureKind kind, double nominal, double measured, PrintAxis axis = PrintAxis.X) =>
        PrintedFeature.Of(kind, axis, Length.FromMillimeters(nominal), Measured.Of(Length.FromMillimeters(measured), Length.FromMillimeters(0.02)));
}
