using System.Globalization;
using MathNet.Numerics.LinearAlgebra;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Turns fitted terms into modes with their uncertainty, and words the findings.</summary>
internal static class ModeReport
{
    internal static Finding None(double seconds) => new(
        ModeFindings.None,
        FindingSeverity.Blocking,
        string.Create(CultureInfo.InvariantCulture, $"Nothing in {seconds:G3} s rises from the noise far enough to be a mode."),
        new FindingNumber("length", seconds, "s"));

    internal static Finding TooShort(int samples, int needed) => new(
        ModeFindings.TooShort,
        FindingSeverity.Blocking,
        string.Create(CultureInfo.InvariantCulture, $"{samples} samples are too few to hold a mode; at least {needed} are needed."),
        new FindingNumber("samples", samples, "1"),
        new FindingNumber("needed", needed, "1"));

    internal static Finding DampingUnknown(Mode mode) => new(
        ModeFindings.DampingUnknown,
        FindingSeverity.Caution,
        string.Create(CultureInfo.InvariantCulture, $"The damping ratio of the mode at {mode.Hertz:G5} Hz, {mode.DampingRatio.ToString("S %", CultureInfo.InvariantCulture)}, is hardly known."),
        new FindingNumber("frequency", mode.Hertz, "Hz"),
        new FindingNumber("dampingRatio", mode.DampingRatio.SiValue, "1"),
        new FindingNumber("uncertainty", mode.DampingRatio.SiStandardUncertainty, "1"));

    internal static Finding SteadyTone(double hertz, double amplitude) => new(
        ModeFindings.SteadyTone,
        FindingSeverity.Note,
        string.Create(CultureInfo.InvariantCulture, $"The tone at {hertz:G5} Hz does not decay: mains, a fan or a motor, or a mode too lightly damped for the length of the record."),
        new FindingNumber("frequency", hertz, "Hz"),
        new FindingNumber("amplitude", amplitude, "1"));

    internal static Finding NoneInBand(FrequencyBand band) => new(
        ModeFindings.None,
        FindingSeverity.Blocking,
        string.Create(CultureInfo.InvariantCulture, $"Nothing from {band} rises from the noise far enough, and wide enough, to be a mode."),
        new FindingNumber("lowest", band.LowerHertz, "Hz"),
        new FindingNumber("highest", band.UpperHertz, "Hz"));

    internal static Finding Unresolved(double hertz, double resolution, int length) => new(
        ModeFindings.Unresolved,
        FindingSeverity.Caution,
        string.Create(CultureInfo.InvariantCulture, $"The resonance at {hertz:G5} Hz is narrower than the {resolution:G3} Hz of a line: take segments of more than {length} samples, or read its decay."),
        new FindingNumber("frequency", hertz, "Hz"),
        new FindingNumber("resolution", resolution, "Hz"),
        new FindingNumber("segmentLength", length, "1"));

    internal static Finding ShapeMisfit(double misfit) => new(
        ModeFindings.ShapeMisfit,
        FindingSeverity.Caution,
        string.Create(CultureInfo.InvariantCulture, $"The spectrum departs from modes over a noise floor by {misfit:G3} times its scatter: the excitation may not be level. Uncertainties are widened."),
        new FindingNumber("misfit", misfit, "1"));

    internal static Finding ResponseMisfit(double misfit) => new(
        ModeFindings.ShapeMisfit,
        FindingSeverity.Caution,
        string.Create(CultureInfo.InvariantCulture, $"The response departs from modes by {misfit:G3} times what its random errors allow: it may not be linear, or more modes act than were fitted. Uncertainties are widened."),
        new FindingNumber("misfit", misfit, "1"));

    internal static Finding MoreToFind(double hertz, int fitted) => new(
        ModeFindings.MoreToFind,
        FindingSeverity.Note,
        string.Create(CultureInfo.InvariantCulture, $"Beside the {fitted} modes that were allowed, one at {hertz:G5} Hz would be significant."),
        new FindingNumber("frequency", hertz, "Hz"),
        new FindingNumber("fitted", fitted, "1"));

    internal static ModeSet OfDecay(DecayFit fit, ReadOnlySpan<double> samples, double rate, double clock)
    {
        var floor = NoiseFloor.Of(fit.Residuals);
        var modes = new List<Mode>();
        var findings = new List<Finding>();
        double[] angles = [.. fit.Terms.Select(term => term.Angle)];
        for (int m = 0; m < fit.Terms.Length; m++)
        {
            DecayTerm term = fit.Terms[m];
            (double variance, double bins) = floor.Mean(term.Angle, angles);
            Matrix<double> covariance = fit.Inverse.SubMatrix(1 + (4 * m), 4, 1 + (4 * m), 4) * variance;
            double lapse = term.Decay * samples.Length;
            if (term.Decay <= 0 || (lapse < 1 && term.Decay < 2 * Math.Sqrt(covariance[0, 0])))
            {
                findings.Add(SteadyTone(term.Angle * rate / (2 * Math.PI), term.Amplitude));
                continue;
            }

            Mode mode = OfTerm(term, covariance, rate, clock, 2 * bins);
            modes.Add(mode);
            if (mode.DampingRatio.RelativeStandardUncertainty > 0.5)
            {
                findings.Add(DampingUnknown(mode));
            }
        }

        if (modes.Count == 0)
        {
            findings.Add(None(samples.Length / rate));
        }

        return new ModeSet(modes, findings, Explained(fit, samples));
    }

    /// <summary>f_n = √(decay² + angle²)·rate/2π, ζ = decay/√(decay² + angle²), A = √(cosine² + sine²); first-order propagation.</summary>
    private static Mode OfTerm(DecayTerm term, Matrix<double> covariance, double rate, double clock, double freedom)
    {
        double natural = Math.Sqrt((term.Decay * term.Decay) + (term.Angle * term.Angle));
        double hertz = natural * rate / (2 * Math.PI);
        double cube = natural * natural * natural;
        var jacobian = Matrix<double>.Build.DenseOfArray(new[,]
        {
            { hertz * term.Decay / (natural * natural), hertz * term.Angle / (natural * natural), 0, 0 },
            { term.Angle * term.Angle / cube, -term.Decay * term.Angle / cube, 0, 0 },
            { 0, 0, term.Cosine / term.Amplitude, term.Sine / term.Amplitude },
        });
        Matrix<double> joint = jacobian * covariance * jacobian.Transpose();
        joint[0, 0] += hertz * hertz * clock * clock;
        double[] flat = new double[9];
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
            {
                flat[(3 * i) + j] = (joint[i, j] + joint[j, i]) / 2;
            }
        }

        return Mode.From([hertz, term.Decay / natural, term.Amplitude], flat, freedom);
    }

    private static double Explained(DecayFit fit, ReadOnlySpan<double> samples)
    {
        double left = 0, all = 0;
        for (int n = 0; n < samples.Length; n++)
        {
            double value = samples[n] - fit.Level;
            left += fit.Residuals[n] * fit.Residuals[n];
            all += value * value;
        }

        return Math.Clamp(1 - (left / all), 0, 1);
    }
}
