using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class CrossBeamTests
{
    private static readonly Measured<FlexuralRigidity> Rigidity = Measured.Of(FlexuralRigidity.FromNewtonSquareMeters(480), FlexuralRigidity.FromNewtonSquareMeters(24));

    private static Measured<Mass> Grams(double grams) => Measured.Of(Mass.FromGrams(grams), Mass.FromGrams(1));

    private static CrossBeam Beam(BeamEnds ends) => CrossBeam.Of(Measured.Of(Mm(400), Mm(2)), Rigidity, ends);

    [Fact]
    public void TheMiddleSagsAsTheHandbookSays()
    {
        // m g L^3/(48 EI) = .4 * 9.80665 * .064/(48 * 480) m = 10.896 um; relative u: 1/400, 3 * 2/400, 24/480
        Measured<Length> sag = Beam(BeamEnds.Supported).MiddleSag(Grams(400));

        Assert.Equal(.4 * 9.80665 * .064 / (48 * 480), sag.SiValue, 1e-18);
        Assert.Equal(Math.Sqrt(Math.Pow(1 / 400.0, 2) + Math.Pow(.015, 2) + Math.Pow(.05, 2)), sag.RelativeStandardUncertainty, 1e-12);
        Assert.Equal(sag.SiValue / 4, Beam(BeamEnds.Clamped).MiddleSag(Grams(400)).SiValue, 1e-18);
    }

    [Theory]
    [InlineData(BeamEnds.Supported)]
    [InlineData(BeamEnds.Clamped)]
    public void TheSagAgreesWithASumOverTheModesOfTheBeam(BeamEnds ends)
    {
        // the deflection under the load as a sum over the modes of the beam
        foreach (double place in new[] { .1, .3, .5, .8 })
        {
            double expected = BeamByEnergy.SagUnderLoad(place, ends == BeamEnds.Clamped) * .4 * 9.80665 * .064 / 480;
            Assert.Equal(expected, Beam(ends).SagAt(place, Grams(400)).SiValue, 2e-3 * expected); // series of 60 terms
        }
    }

    [Fact]
    public void EndsDoNotSagAndBothSidesAreAlike()
    {
        CrossBeam beam = Beam(BeamEnds.Supported);
        Assert.Equal(0, beam.SagAt(0, Grams(400)).SiValue);
        Assert.Equal(0, beam.SagAt(1, Grams(400)).SiValue, 1e-20);
        Assert.Equal(beam.SagAt(.2, Grams(400)).SiValue, beam.SagAt(.8, Grams(400)).SiValue, 1e-18);
    }

    [Fact]
    public void AMapMadeWithALighterCarriageIsRaisedForAHeavierOne()
    {
        CrossBeam beam = Beam(BeamEnds.Supported);

        Assert.Equal(beam.MiddleSag(Grams(200)).SiValue, beam.MapCorrection(.5, Grams(300), Grams(500)).SiValue, 1e-18);
        Assert.Equal(0, beam.MapCorrection(.5, Grams(300), Grams(300)).SiValue);
        Assert.True(beam.MapCorrection(.5, Grams(500), Grams(300)).SiValue < 0);
    }

    [Fact]
    public void CallersMistakesAreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Beam((BeamEnds)7));
        Assert.Throws<ArgumentOutOfRangeException>(() => Beam(BeamEnds.Clamped).SagAt(1.1, Grams(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => CrossBeam.Of(Measured.Of(Mm(-1), Mm(2)), Rigidity, BeamEnds.Clamped));
        Assert.Throws<InvalidOperationException>(() => CrossBeam.Of(default, Rigidity, BeamEnds.Clamped));
    }
}
