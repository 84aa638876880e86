using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace PrinterMath.Extrusion.Tests;

public sealed class CylinderHeatingTests
{
    // Both branches at the change from one to the other: 90 terms against the expansion.
    [Fact]
    public void Short_and_long_times_meet()
    {
        double below = CylinderHeating.UnaccomplishedMean(Math.BitDecrement(5e-4)), above = CylinderHeating.UnaccomplishedMean(5e-4);
        Assert.Equal(below, above, 2e-12);
    }

    [Property(MaxTest = 300)]
    public Property Falls_with_time_and_the_centre_lags_the_mean() => Prop.ForAll(Arb.From(Gen.Choose(-450, 100)), n =>
    {
        double fo = Math.Pow(10, n / 100.0), later = fo * 1.1;
        return CylinderHeating.UnaccomplishedMean(later) < CylinderHeating.UnaccomplishedMean(fo)
            && CylinderHeating.UnaccomplishedAtCenter(later) <= CylinderHeating.UnaccomplishedAtCenter(fo)
            && CylinderHeating.UnaccomplishedAtCenter(fo) >= CylinderHeating.UnaccomplishedMean(fo);
    });

    [Property(MaxTest = 100)]
    public Property Inverse_gives_back_its_part() => Prop.ForAll(Arb.From(Gen.Choose(1, 999)), n =>
        Math.Abs(CylinderHeating.UnaccomplishedAtCenter(CylinderHeating.FourierFor(n / 1000.0)) - (n / 1000.0)) < 1e-12);

    // A film as good as none: Bi = 10⁶ leaves 1/Bi of the difference in the film.
    [Fact]
    public void A_perfect_film_is_a_fixed_wall() => Assert.All([0.05, 0.2, 1.0], fo =>
        Assert.Equal(CylinderHeating.UnaccomplishedAtCenter(fo), CylinderHeating.UnaccomplishedAtCenter(fo, 1e6), 1e-5));

    // A poor film: the cylinder is isothermal and decays with exp(−2·Bi·Fo).
    [Fact]
    public void A_poor_film_heats_all_of_it_alike() =>
        Assert.Equal(Math.Exp(-2 * 1e-4 * 2000), CylinderHeating.UnaccomplishedMean(2000, 1e-4), 1e-4);

    [Fact]
    public void Refuses_what_cannot_be()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CylinderHeating.UnaccomplishedMean(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => CylinderHeating.UnaccomplishedMean(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => CylinderHeating.UnaccomplishedAtCenter(0.1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => CylinderHeating.UnaccomplishedAtCenter(1e-5, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => CylinderHeating.FourierFor(1));
        Assert.Equal(1, CylinderHeating.UnaccomplishedMean(0));
        Assert.Equal(0, CylinderHeating.UnaccomplishedAtCenter(1e6));
    }
}
