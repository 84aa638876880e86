using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

public sealed class MeltPathTests
{
    private static readonly Temperature Usual = Temperature.FromDegreesCelsius(210);
    private static readonly Frequency Hundred = Frequency.FromPerSecond(100);

    [Fact]
    public void Pieces_add_up_and_the_orifice_takes_most()
    {
        var path = MeltPath.Of(
            MeltPassage.Cylinder("barrel", Melts.Exactly(2.0), Melts.Exactly(20.0)),
            MeltPassage.Taper("taper", Melts.Exactly(2.0), Melts.Exactly(0.4), Melts.Exactly(1.5)),
            MeltPassage.Cylinder("land", Melts.Exactly(0.4), Melts.Exactly(0.8)));
        PressureDrop drop = path.DropAt(Melts.Flow(10), Melts.Exactly(210), Melts.Pla);
        Assert.Equal(drop.Total.SiValue, drop.Passages.Sum(piece => piece.Drop.Pascals), 1e-6);
        Assert.Equal("land", drop.Passages.MaxBy(piece => piece.Drop)!.Name);
        Assert.Empty(drop.Findings);
    }

    // ΔP ~ R^−(3n + 1) at constant length: 5 % of the radius is 11 % of the pressure for n = 0.4; 30 % of the viscosity counts in full.
    [Fact]
    public void Uncertainty_of_the_orifice_and_of_the_melt()
    {
        MeltViscosity melt = MeltViscosity.PowerLaw(0.4, DynamicViscosity.FromPascalSeconds(1e4), Usual, MolarEnergy.FromJoulesPerMole(0), Melts.Everywhere with { RelativeStandardUncertainty = 0.3 });
        var path = MeltPath.Of(MeltPassage.Cylinder("land", Measured.Of(Length.FromMillimeters(0.4), Length.FromMillimeters(0.02)), Melts.Exactly(0.8)));
        PressureDrop drop = path.DropAt(Melts.Flow(5), Melts.Exactly(210), melt);
        Assert.Equal(Math.Sqrt((0.3 * 0.3) + (0.05 * 2.2 * 0.05 * 2.2)), drop.Total.RelativeStandardUncertainty, 1e-4);
        Assert.Equal("viscosity", drop.Budget.Largest.Input.Name);
    }

    [Fact]
    public void Constants_used_where_they_were_not_measured_are_flagged()
    {
        MeltViscosity pla = MeltMaterial.Pla.Viscosity!;
        Assert.Empty(pla.FindingsAt(Hundred, Usual));
        Assert.Equal(MeltFindings.TemperatureOutsideRange, Assert.Single(pla.FindingsAt(Hundred, Temperature.FromDegreesCelsius(230))).Code);
        Assert.Equal(MeltFindings.ShearRateOutsideRange, Assert.Single(pla.FindingsAt(Frequency.FromPerSecond(1e6), Usual)).Code);
        PressureDrop drop = Melts.Capillary.DropAt(Melts.Flow(500), Melts.Exactly(230), pla);
        Assert.Equal([MeltFindings.TemperatureOutsideRange, MeltFindings.ShearRateOutsideRange], drop.Findings.Select(finding => finding.Code));
    }

    [Fact]
    public void A_blunt_taper_is_flagged()
    {
        MeltPassage blunt = MeltPassage.Taper("taper", Melts.Exactly(2.0), Melts.Exactly(0.4), Melts.Exactly(0.7));
        Assert.Equal(48.8, blunt.HalfAngle.Degrees, 0.05);
        Assert.Equal(MeltFindings.BluntTaper, Assert.Single(MeltPath.Of(blunt).DropAt(Melts.Flow(5), Melts.Exactly(210), Melts.Pla).Findings).Code);
    }

    [Fact]
    public void The_cross_model_is_refused_near_its_pole()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Melts.Pla.At(Hundred, Temperature.FromKelvins(373)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Melts.Pla.At(Hundred, Temperature.FromKelvins(321.5)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Melts.Capillary.DropAt(Melts.Flow(5), Melts.Exactly(60), Melts.Pla));
        Assert.Equal(3.31719e9, Melts.ZeroShear(Melts.Pla, Temperature.FromKelvins(373.15)), 1);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1.01)]
    [InlineData(double.NaN)]
    public void Impossible_exponents_are_refused(double exponent)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Melts.PowerLaw(exponent, 1e4));
        Assert.Throws<ArgumentOutOfRangeException>(() => MeltViscosity.CrossWlf(
            exponent, Pressure.FromPascals(1e5), DynamicViscosity.FromPascalSeconds(3e9), Usual, 20, TemperatureDelta.FromKelvins(51.6), Melts.Everywhere));
    }

    [Fact]
    public void Refuses_what_cannot_be()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Melts.Pla.At(Frequency.Zero, Usual));
        Assert.Throws<ArgumentOutOfRangeException>(() => Melts.Capillary.DropAt(Melts.Flow(0), Melts.Exactly(210), Melts.Pla));
        Assert.Throws<InvalidOperationException>(() => Melts.Capillary.DropAt(Melts.Flow(5), default, Melts.Pla));
        Assert.Throws<ArgumentOutOfRangeException>(() => MeltPath.Of());
        Assert.Throws<ArgumentException>(() => MeltPath.Of(Melts.Capillary.Passages[0], Melts.Capillary.Passages[0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => MeltPassage.Taper("taper", Melts.Exactly(2.0), Melts.Exactly(2.0), Melts.Exactly(1.0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => MeltPassage.Cylinder("land", Melts.Exactly(0.0), Melts.Exactly(1.0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Melts.PowerLaw(0.5, 1e4, -1));
        ViscosityRange reversed = Melts.Everywhere with { HighestTemperature = Temperature.FromDegreesCelsius(50) };
        Assert.Throws<ArgumentOutOfRangeException>(() => MeltViscosity.PowerLaw(0.4, DynamicViscosity.FromPascalSeconds(1), Usual, default, reversed));
    }

    [Fact]
    public void Only_a_newtonian_power_law_has_a_plateau()
    {
        Assert.False(Melts.PowerLaw(0.4, 1e4).TryGetZeroShear(Usual, out _));
        Assert.Equal(800, Melts.ZeroShear(Melts.PowerLaw(1, 800), Usual), 1e-9);
    }

    [Fact]
    public void Texts_are_invariant()
    {
        Assert.Equal("land: 0.4 mm, 0.8 mm long", MeltPassage.Cylinder("land", Melts.Exactly(0.4), Melts.Exactly(0.8)).ToString());
        Assert.Equal("power law, n = 0.4, K = 1E+04 Pa·sⁿ at 210 °C", Melts.PowerLaw(0.4, 1e4).ToString());
    }
}
