using System.Numerics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

public sealed class ResponseFitTests
{
    private static readonly PlantedMode[] Two = [new(41, 0.03, 0.7), new(47, 0.05, 0.3)];
    private static readonly double[] Lines = [.. Enumerable.Range(1, 240).Select(k => k * 0.5)];
    private static readonly ResponseFitOptions NoClock = new() { RelativeClockUncertainty = 0 };

    // Without noise the two modes are had to rounding: 10⁻¹¹ of the largest value, times some hundred for modes an octave of bandwidths apart.
    [Fact]
    public void Modes_without_noise_are_exact()
    {
        ResponseFit fit = ResponseFit.Fit(Transmissibility.FromValues(Lines, Values(Two)), NoClock);
        Assert.Equal(2, fit.Modes.Count);
        Compare(fit, Two, 1e-9);
        Assert.Equal(1, fit.ExplainedShare, 1e-12);
    }

    // The same modes from displacement, velocity and acceleration over force, given and converted; remainders of other modes on both sides.
    [Fact]
    public void All_forms_of_a_response_hold_the_same_modes()
    {
        PlantedMode[] all = [new(3, 0.02, 5), .. Two, new(900, 0.02, 4)];
        double[] band = [.. Lines.Where(hertz => hertz > 20)];
        Receptance alpha = Receptance.FromValues(band, Values(all, band));
        ResponseFit[] fits =
        [
            ResponseFit.Fit(alpha, NoClock), ResponseFit.Fit(alpha.ToMobility(), NoClock), ResponseFit.Fit(alpha.ToAccelerance(), NoClock),
            ResponseFit.Fit(Accelerance.FromValues(band, alpha.ToAccelerance().Response.Values), NoClock),
            ResponseFit.Fit(Accelerance.FromValues(band, alpha.ToAccelerance().Response.Values).ToReceptance(), NoClock),
        ];
        foreach (ResponseFit fit in fits)
        {
            foreach (PlantedMode planted in Two)
            {
                // Two remainders stand for the whole tails of the outer modes, of which they are the first terms: (3/20)² and (120/900)² of a remainder are left.
                Mode mode = fit.Modes.MinBy(m => Math.Abs(m.Frequency.SiValue - planted.Hertz))!;
                Assert.Equal(planted.Hertz, mode.Frequency.SiValue, 0.02);
                Assert.Equal(planted.Zeta, mode.DampingRatio.SiValue, 5e-4);
            }
        }

        double omega = 2 * Math.PI * fits[0].Dominant.Frequency.SiValue;
        Assert.Equal(omega * omega * fits[0].Dominant.Amplitude.SiValue, fits[2].Dominant.Amplitude.SiValue, 1e-3 * fits[2].Dominant.Amplitude.SiValue);
        Assert.Equal(fits[0].Dominant.Frequency.SiValue, fits[1].Dominant.Frequency.SiValue, 1e-12);
    }

    // Height of a single mode's peak is share/(2ζ√(1 − ζ²)) where the other pole of the pair is left out; the residue is that of share·ω_n²/(2jω_d).
    [Fact]
    public void Residue_and_height_are_those_of_the_mode()
    {
        PlantedMode one = new(60, 0.04, 0.8);
        ResponseFit fit = ResponseFit.Fit(Transmissibility.FromValues(Lines, Values([one])), NoClock);
        double omega = 2 * Math.PI * 60, root = Math.Sqrt(1 - (0.04 * 0.04));
        Assert.Equal(0.8 / (2 * 0.04 * root), fit.Dominant.Amplitude.SiValue, 1e-7);
        Assert.Equal(-0.8 * omega / (2 * root), fit.Residues[0].Imaginary, 1e-5);
        Assert.Equal(0, fit.Residues[0].Real, 1e-5);
        Assert.Equal(Values([one])[100].Real, fit.FittedValues[100].Real, 1e-8);
    }

    // A delay of 2 ms turns all phases by 29° at 41 Hz; frequencies and damping stay within a hundredth of a bandwidth.
    [Fact]
    public void A_short_delay_does_not_move_modes()
    {
        Complex[] delayed = [.. Values(Two).Zip(Lines, (value, hertz) => value * Complex.Exp(new Complex(0, -2 * Math.PI * hertz * 0.002)))];
        ResponseFit fit = ResponseFit.Fit(Transmissibility.FromValues(Lines, delayed), NoClock with { MostModes = 2 });
        foreach (PlantedMode planted in Two)
        {
            Mode mode = fit.Modes.MinBy(m => Math.Abs(m.Frequency.SiValue - planted.Hertz))!;
            Assert.Equal(planted.Hertz, mode.Frequency.SiValue, 0.02 * planted.Zeta * planted.Hertz);
            Assert.Equal(planted.Zeta, mode.DampingRatio.SiValue, 0.02 * planted.Zeta);
        }
    }

    [Fact]
    public void What_is_left_out_is_said()
    {
        ResponseFit fit = ResponseFit.Fit(Transmissibility.FromValues(Lines, Values(Two)), NoClock with { MostModes = 1 });
        Finding more = Assert.Single(fit.Findings, finding => finding.Code == ModeFindings.MoreToFind);
        Assert.Equal(1, more.Numbers[1].Value);
        ResponseFit nothing = ResponseFit.Fit(Transmissibility.FromValues(Lines, new Complex[Lines.Length]));
        Assert.Equal(ModeFindings.None, Assert.Throws<IndeterminateException>(() => nothing.Dominant).Finding!.Code);
        Assert.False(nothing.TryGetDominant(out _));
    }

    [Fact]
    public void Bad_arguments_name_themselves()
    {
        Transmissibility h = Transmissibility.FromValues(Lines, Values(Two));
        Assert.Equal("MostModes", Assert.Throws<ArgumentOutOfRangeException>(() => ResponseFit.Fit(h, new ResponseFitOptions { MostModes = 0 })).ParamName);
        Assert.Equal("FalseAlarmProbability", Assert.Throws<ArgumentOutOfRangeException>(() => ResponseFit.Fit(h, new ResponseFitOptions { FalseAlarmProbability = 0.5 })).ParamName);
        Assert.Equal("RelativeClockUncertainty", Assert.Throws<ArgumentOutOfRangeException>(() => ResponseFit.Fit(h, new ResponseFitOptions { RelativeClockUncertainty = -1 })).ParamName);
        Assert.Equal("LowestFrequency", Assert.Throws<ArgumentOutOfRangeException>(() => ResponseFit.Fit(h, new ResponseFitOptions { LowestFrequency = Frequency.FromHertz(-1) })).ParamName);
        Assert.Equal("HighestFrequency", Assert.Throws<ArgumentException>(
            () => ResponseFit.Fit(h, new ResponseFitOptions { LowestFrequency = Frequency.FromHertz(40), HighestFrequency = Frequency.FromHertz(42) })).ParamName);
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => ResponseFit.Fit(h, null, source.Token));
    }

    internal static Complex[] Values(IReadOnlyList<PlantedMode> modes, double[]? lines = null) => [.. (lines ?? Lines).Select(hertz => PlantedMode.Response(modes, hertz))];

    private static void Compare(ResponseFit fit, PlantedMode[] planted, double tolerance)
    {
        foreach (PlantedMode expected in planted)
        {
            Mode mode = fit.Modes.MinBy(m => Math.Abs(m.Frequency.SiValue - expected.Hertz))!;
            Assert.Equal(expected.Hertz, mode.Frequency.SiValue, tolerance * expected.Hertz);
            Assert.Equal(expected.Zeta, mode.DampingRatio.SiValue, 10 * tolerance);
        }
    }
}
