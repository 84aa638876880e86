using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class AxisStiffnessTests
{
    // 12 kN·(1/0.3 + 1/0.9) = 53 333 N/m; 6 N/53 333 N/m = 112.5 µm.
    [Fact]
    public void Strands_by_hand()
    {
        ForcePerLength k = AxisStiffness.OfStrands(Force.FromNewtons(12_000), Length.FromMeters(0.3), Length.FromMeters(0.9));
        Assert.Equal(53_333.333, k.NewtonsPerMeter, 1e-3);
        Assert.Equal(112.5, AxisStiffness.Deflection(Force.FromNewtons(6), k).Micrometers, 1e-9);
        Assert.Equal(Math.Sqrt(53_333.333 / 0.5) / (2 * Math.PI), AxisStiffness.NaturalFrequency(k, Mass.FromKilograms(0.5)).Hertz, 1e-6);
    }

    // 50·0.4/0.0064² = 488 281.25 N/m; two equal springs in series are half as stiff.
    [Fact]
    public void Motor_by_hand()
    {
        ForcePerLength k = AxisStiffness.OfMotor(Torque.FromNewtonMeters(0.4), Length.FromMillimeters(6.4));
        Assert.Equal(488_281.25, k.NewtonsPerMeter, 1e-6);
        Assert.Equal(244_140.625, AxisStiffness.InSeries(k, k).NewtonsPerMeter, 1e-6);
    }

    // 200·16/(2 mm·20) = 80 for each millimetre when slack; at 30 N on 12 kN strain is 0.25 %: 80/1.0025 = 79.800499.
    [Fact]
    public void Scale_by_hand()
    {
        Assert.Equal(80_000, AxisStiffness.StepsPerLength(200, 16, Length.FromMillimeters(2), 20, Force.Zero, Force.FromNewtons(12_000)).InverseMeters, 1e-6);
        Assert.Equal(79_800.499, AxisStiffness.StepsPerLength(200, 16, Length.FromMillimeters(2), 20, Force.FromNewtons(30), Force.FromNewtons(12_000)).InverseMeters, 1e-3);
        Assert.Throws<ArgumentOutOfRangeException>(() => AxisStiffness.OfStrands(Force.FromNewtons(12_000), Length.Zero, Length.FromMeters(1)));
    }
}
