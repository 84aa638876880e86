using UnitsNet;

namespace PrinterMath.Resonance.Tests;

[Trait("Evidence", "Published")]
public sealed class PathDeviationReferenceTests
{
    private static readonly Frequency Fifty = Frequency.FromHertz(50);

    // Corners at 100 mm/s and 50 Hz, evaluated with NumPy: undamped by v·MAD·sin(θ/2), damped by minimising the distance over time; six digits given, millimetres.
    [Theory]
    [InlineData("ZV", 0, 90, 0.353553)]
    [InlineData("ZVD", 0, 90, 0.353553)]
    [InlineData("ZVDD", 0, 90, 0.530330)]
    [InlineData("EI", 0, 90, 0.371231)]
    [InlineData("2H", 0, 90, 0.579541)]
    [InlineData("3H", 0, 90, 0.653733)]
    [InlineData("ZV", 0, 45, 0.191342)]
    [InlineData("ZVD", 0.1, 90, 0.380671)]
    [InlineData("1H", 0.1, 90, 0.405683)]
    [InlineData("2H", 0.1, 90, 0.548519)]
    [InlineData("3H", 0.1, 90, 0.726705)]
    public void Corner(string family, double zeta, double degrees, double millimeters)
    {
        ImpulseSequence s = Make(family, zeta);
        var turn = Angle.FromDegrees(degrees);
        Assert.Equal(millimeters, PathDeviation.AtCorner(s, turn, Speed.FromMillimetersPerSecond(100), Acceleration.Zero).Millimeters, 6e-7);
        Assert.Equal(100, PathDeviation.LargestCornerSpeed(s, turn, Length.FromMillimeters(millimeters), Acceleration.Zero).MillimetersPerSecond, 2e-4);
    }

    // Arc of 5 mm at 100 mm/s and 50 Hz: R·(1 − |ΣA·exp(−i·v/R·t)|) evaluated with NumPy; five digits given, millimetres.
    [Theory]
    [InlineData("ZV", 0.024979)]
    [InlineData("ZVD", 0.049834)]
    [InlineData("EI", 0.052325)]
    [InlineData("2H", 0.088367)]
    [InlineData("3H", 0.136053)]
    public void Arc(string family, double millimeters) => Assert.Equal(
        millimeters,
        PathDeviation.OnArc(Make(family, 0), Length.FromMillimeters(5), Speed.FromMillimetersPerSecond(100)).Millimeters,
        6e-7);

    private static ImpulseSequence Make(string family, double zeta) => family[1] == 'H'
        ? ImpulseSequence.MultiHumpExtraInsensitive(Fifty, zeta, family[0] - '0')
        : ImpulseSequenceReferenceTests.Make(family, Fifty, zeta);
}
