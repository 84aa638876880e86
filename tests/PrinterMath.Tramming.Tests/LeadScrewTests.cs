using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class LeadScrewTests
{
    [Fact]
    public void StepsAreThoseOfTheLead()
    {
        // lead 8 mm, 200 steps: 40 um a full step; 16 microsteps: 400 a millimetre
        LeadScrew z = LeadScrew.Of(Measured.Of(Mm(8), Mm(.008)));

        Assert.Equal(40, z.FullStep.SiValue * 1e6, 1e-12);
        Assert.Equal(2.5, z.Microstep.SiValue * 1e6, 1e-12);
        Assert.Equal(400, z.StepsPerMillimeter.SiValue, 1e-10);
        Assert.Equal(.4, z.StepsPerMillimeter.SiStandardUncertainty, 1e-12); // 1 part in 1000
        Assert.Equal(20, LeadScrew.Of(Measured.Exact(Mm(8)), screwTurnsPerMotorTurn: .5).FullStep.SiValue * 1e6, 1e-12);
    }

    [Fact]
    public void LayersOfWholeStepsAreListed()
    {
        LeadScrew z = LeadScrew.Of(Measured.Exact(Mm(8)));

        Assert.Equal([.12, .16, .2, .24, .28, .32], z.WholeStepLayers(Mm(.1), Mm(.32)).Select(l => Math.Round(l.Millimeters, 9)));
        Assert.Equal(.24, z.NearestWholeStepLayer(Mm(.25)).Millimeters, 1e-12);
        Assert.Equal(.04, z.NearestWholeStepLayer(Mm(.001)).Millimeters, 1e-12);
        Assert.True(z.IsWholeStepLayer(Mm(.2)));
        Assert.False(z.IsWholeStepLayer(Mm(.25)));
        Assert.Empty(z.WholeStepLayers(Mm(.13), Mm(.15)));
    }

    [Fact]
    public void CallersMistakesAreRefused()
    {
        LeadScrew z = LeadScrew.Of(Measured.Exact(Mm(8)));
        Assert.Throws<ArgumentOutOfRangeException>(() => LeadScrew.Of(Measured.Exact(Mm(-8))));
        Assert.Throws<ArgumentOutOfRangeException>(() => LeadScrew.Of(Measured.Exact(Mm(8)), 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => LeadScrew.Of(Measured.Exact(Mm(8)), microsteps: 512));
        Assert.Throws<InvalidOperationException>(() => LeadScrew.Of(default));
        Assert.Throws<ArgumentOutOfRangeException>(() => z.NearestWholeStepLayer(Length.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => z.WholeStepLayers(Mm(.3), Mm(.2)));
    }
}
