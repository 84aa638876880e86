using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class ShapeDecompositionTests
{
    /// <summary>300 cases: 93 % − 3.29·√(0.93·0.07/300) and 97 % + 3.29·√(0.97·0.03/300), the latter above 1.</summary>
    private const double Lowest = 0.882;

    private static readonly double[] Axis = [-1, -0.5, 0, 0.5, 1];

    [Fact]
    public void Shares_of_a_pure_tilt_and_a_pure_bow()
    {
        ShapeDecomposition tilt = ShapeDecomposition.Fit(Points((x, y) => 3 + (0.1 * x) - (0.2 * y)));
        Assert.Equal(1, tilt.TiltShare, 1e-12);
        Assert.Equal(0.2, tilt.Component(ShapeTerm.TiltX).Share, 1e-12);
        Assert.Equal(0.4, tilt.Component(ShapeTerm.TiltY).PeakToValley.Meters, 1e-14);
        ShapeDecomposition bow = ShapeDecomposition.Fit(Points((x, y) => 0.1 * x * x));
        Assert.Equal(1, bow.WarpShare, 1e-12);
        Assert.Equal(0.1, bow.Component(ShapeTerm.BowX).PeakToValley.Meters, 1e-15);
        Assert.Equal(1, bow.TiltShare + bow.WarpShare + bow.LeftOverShare, 1e-12);
    }

    // σ² (AᵀA)⁻¹ by hand for the twist on 5 × 5 nodes: Σξ²η² = (2·(1 + ¼))² = 6.25, orthogonal to the others.
    [Fact]
    public void Uncertainty_of_the_twist_by_hand()
    {
        ShapeDecomposition shape = ShapeDecomposition.Fit(Points((x, y) => 0.1 * x * y), new ShapeOptions { Repeatability = Length.FromMeters(0.01) });
        Assert.Equal(0.01 / 2.5, shape.Component(ShapeTerm.Twist).Amplitude.SiStandardUncertainty, 1e-16);
        Assert.True(shape.Component(ShapeTerm.Twist).IsSignificant);
        Assert.False(shape.Component(ShapeTerm.BowX).IsSignificant);
        Assert.Contains(shape.Findings, f => f.Code == SurfaceFindings.NoiseOverstated);
    }

    [Fact]
    public void Higher_shape_is_named()
    {
        ShapeDecomposition shape = ShapeDecomposition.Fit(Points((x, y) => 0.1 * Math.Cos(4 * x)), new ShapeOptions { Repeatability = Length.FromMeters(0.001) });
        Assert.Equal(SurfaceFindings.ShapeLeftOver, Assert.Single(shape.Findings).Code);
        Assert.True(shape.LeftOverChanceProbability < 1e-6);
        Assert.InRange(shape.NoiseShare!.Value, 0, 0.01);
    }

    [Fact]
    public void Points_that_cannot_tell_are_a_finding()
    {
        ProbePoint[] twoColumns = [.. Points((x, y) => x).Where(p => Math.Abs(p.XMeters) == 1)];
        ShapeDecomposition shape = ShapeDecomposition.Fit(twoColumns);
        Assert.False(shape.TryGetComponents(out _));
        Assert.Equal(SurfaceFindings.ShapeUndetermined, Assert.Throws<IndeterminateException>(() => shape.TiltShare).Finding!.Code);
        Assert.Throws<ArgumentException>(() => ShapeDecomposition.Fit([]));
        Assert.Throws<ArgumentException>(() => ShapeDecomposition.Fit([.. Points((x, y) => x).Where(p => p.XMeters == 1)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShapeDecomposition.Fit(twoColumns, new ShapeOptions { SignificanceLevel = 1 }));
    }

    [Fact]
    public void Unit_scaling_and_quarter_turn()
    {
        ProbePoint[] points = new SurfaceSimulator(2).Probe("ridge", 6, 5, 3e-6);
        ShapeDecomposition one = ShapeDecomposition.Fit(points);
        ShapeDecomposition scaled = ShapeDecomposition.Fit([.. points.AsEnumerable().Reverse().Select(p => ProbePoint.FromMeters(1000 * p.XMeters, 1000 * p.YMeters, 1000 * p.ZMeters))]);
        ShapeDecomposition turned = ShapeDecomposition.Fit([.. points.Select(p => ProbePoint.FromMeters(-p.YMeters, p.XMeters, p.ZMeters))]);
        ShapeTerm[] after = [ShapeTerm.Offset, ShapeTerm.TiltY, ShapeTerm.TiltX, ShapeTerm.BowY, ShapeTerm.Twist, ShapeTerm.BowX];
        double[] sign = [1, 1, -1, 1, -1, 1];
        for (int i = 0; i < 6; i++)
        {
            double c = one.Components[i].Estimate.Meters;
            Assert.Equal(c, scaled.Components[i].Estimate.Meters / 1000, 1e-16);
            Assert.Equal(one.Components[i].Share, scaled.Components[i].Share, 1e-9);
            Assert.Equal(sign[i] * c, turned.Component(after[i]).Estimate.Meters, 1e-16);
        }
    }

    // Each term's 95 % interval, known and unknown repeatability, normal and coarse noise. Planted amplitudes in a form of its own, by corner and middle heights.
    [Theory]
    [InlineData(3, 2e-6, true, false)]
    [InlineData(5, 1e-5, true, true)]
    [InlineData(5, 1e-5, false, false)]
    [InlineData(9, 3e-5, false, true)]
    public void Term_intervals_hold_what_was_planted(int side, double noise, bool stated, bool coarse)
    {
        var simulator = new SurfaceSimulator(1);
        double[] truth = [.. ShapeDecomposition.Fit(simulator.Probe("saddle", side, side, 0)).Components.Select(c => c.Estimate.Meters)];

        // The saddle by hand: 1e-4·4(a − ½)(b − 0.4) + 3e-4·a with a, b = (1 + ξ)/2, (1 + η)/2 has twist 1e-4 and tilts 1.7e-4 and 0.
        Assert.Equal(1e-4, truth[(int)ShapeTerm.Twist], 1e-16);
        Assert.Equal(1.7e-4, truth[(int)ShapeTerm.TiltX], 1e-16);
        int[] held = new int[6];
        for (int i = 0; i < 300; i++)
        {
            ShapeDecomposition shape = ShapeDecomposition.Fit(
                simulator.Probe("saddle", side, side, noise, coarse: coarse),
                new ShapeOptions { Repeatability = stated ? Length.FromMeters(noise) : null });
            for (int term = 0; term < 6; term++)
            {
                held[term] += shape.Components[term].Amplitude.Interval().Contains(Length.FromMeters(truth[term])) ? 1 : 0;
            }
        }

        Assert.All(held, count => Assert.InRange(count / 300.0, Lowest, 1));
    }

    // Terms that are not there are called significant in 5 % of cases: within the 99.9 % binomial limits of 300 times three terms.
    [Fact]
    public void Absent_terms_are_rarely_significant()
    {
        var simulator = new SurfaceSimulator(1);
        int alarms = 0;
        for (int i = 0; i < 300; i++)
        {
            ShapeDecomposition shape = ShapeDecomposition.Fit(simulator.Probe("plane", 5, 5, 1e-5), new ShapeOptions { Repeatability = Length.FromMicrometers(10) });
            alarms += shape.Components.Count(c => c.Term is ShapeTerm.BowX or ShapeTerm.BowY or ShapeTerm.Twist && c.IsSignificant);
        }

        Assert.InRange(alarms / 900.0, 0.026, 0.074);
    }

    private static ProbePoint[] Points(Func<double, double, double> height) => [.. from y in Axis from x in Axis select ProbePoint.FromMeters(x, y, height(x, y))];
}
