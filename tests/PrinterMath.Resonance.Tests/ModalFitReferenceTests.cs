using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

[Trait("Evidence", "Published")]
public sealed class ModalFitReferenceTests
{
    private const double ReadTo = 0.05;

    private static readonly ModalFit Pole = ModalFit.FromSpectrum(
        Welch.Estimate(
            SampledSignal.FromSamples(
                [.. File.ReadLines(DataFile.Path("ccbysa/light_pole_wind_50Hz.csv")).Skip(1).Select(line => double.Parse(line.Split(',')[1], CultureInfo.InvariantCulture))],
                Frequency.FromHertz(50)),
            new WelchOptions { SegmentLength = 2048 }),
        new ModalFitOptions { Shape = ResponseShape.Accelerance, MostModes = 12 });

    // A light pole in the wind: open data set "Open-Vibrations", channel 1, see data/README.md. Peaks of its scipy.signal.welch spectrum (SciPy 1.10.1), read to 0.05 Hz. The peak of an
    // averaged spectrum lies anywhere on a mode's flat top: a quarter of the half-power bandwidth is allowed besides the reading.
    [Theory]
    [InlineData(2.70)]
    [InlineData(7.24)]
    [InlineData(12.4)]
    [InlineData(14.6)]
    public void Modes_of_a_pole_in_the_wind_lie_at_the_peaks(double peak)
    {
        Mode mode = Pole.Modes.MinBy(m => Math.Abs(m.Frequency.SiValue - peak))!;
        double quarter = 0.25 * 2 * mode.DampingRatio.SiValue * mode.Frequency.SiValue;
        Assert.InRange(Math.Abs(mode.Frequency.SiValue - peak), 0, ReadTo + quarter);
    }

    // The wind's own slow swaying below 1.1 Hz, less than a line wide in places, must not be given a damping ratio.
    [Fact]
    public void Nothing_else_is_called_a_mode() => Assert.Equal(4, Pole.Modes.Count);

    [Fact]
    public void That_the_wind_is_not_level_is_said() => Assert.Contains(Pole.Findings, finding => finding.Code == ModeFindings.ShapeMisfit);
}
