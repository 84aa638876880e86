using MathNet.Numerics.LinearAlgebra;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Turns fitted terms of a spectrum into modes, tones and rejected poles with their uncertainty.</summary>
internal static class SpectralReport
{
    private const double LargestDamping = 0.35;
    private const double MisfitLimit = 6;

    internal static ModalFit Of(SpectrumLines lines, SpectralSelection selection, FrequencyBand band, double clock)
    {
        SpectralModel model = selection.Model;
        double misfit = Misfit(lines, model, out double expectedScatter);
        List<Finding> findings = [];
        bool departs = misfit > 1 + (MisfitLimit * expectedScatter);
        if (departs && model.Terms.Count > 0)
        {
            findings.Add(ModeReport.ShapeMisfit(misfit));
        }

        Matrix<double> covariance = WhittleFit.Covariance(lines, model) * (departs ? misfit : 1);
        List<Mode> modes = [];
        List<SteadyTone> tones = [];
        List<RejectedPole> rejected = [.. selection.Dropped.Select(d => Reject(lines, d.Term, RejectionReason.NotSignificant, d.Significance))];
        int at = 0;
        for (int t = 0; t < model.Terms.Count; t++)
        {
            SpectralTerm term = model.Terms[t];
            Matrix<double> own = covariance.SubMatrix(at, term.Parameters, at, term.Parameters);
            at += term.Parameters;
            if (term.IsTone)
            {
                tones.Add(ToneOf(lines, term, own, clock));
                findings.Add(ModeReport.SteadyTone(tones[^1].Frequency.SiValue, tones[^1].Amplitude.SiValue));
            }
            else if (ReasonAgainst(lines, term, band) is { } reason)
            {
                rejected.Add(Reject(lines, term, reason, selection.Significance(t)));
                if (reason == RejectionReason.Unresolved)
                {
                    findings.Add(ModeReport.Unresolved(Hertz(lines, term), lines.Resolution, lines.SegmentLength));
                }
            }
            else
            {
                modes.Add(ModeOf(lines, term, own, clock));
                if (modes[^1].DampingRatio.RelativeStandardUncertainty > 0.5)
                {
                    findings.Add(ModeReport.DampingUnknown(modes[^1]));
                }
            }
        }

        if (modes.Count == 0)
        {
            findings.Add(ModeReport.NoneInBand(band));
        }

        return new ModalFit(modes, tones, rejected, findings, band, model.Expected);
    }

    private static double Hertz(SpectrumLines lines, SpectralTerm term) => term.Angle * lines.Rate / (2 * Math.PI);

    private static RejectionReason? ReasonAgainst(SpectrumLines lines, SpectralTerm term, FrequencyBand band) =>
        term.Damping > LargestDamping ? RejectionReason.TooWide
        : term.BandwidthLines(lines.SegmentLength) < 1 ? RejectionReason.Unresolved
        : Hertz(lines, term) < band.LowerHertz + lines.Resolution || Hertz(lines, term) > band.UpperHertz - lines.Resolution ? RejectionReason.AtEdge
        : null;

    private static RejectedPole Reject(SpectrumLines lines, SpectralTerm term, RejectionReason reason, double significance) =>
        new(Hertz(lines, term), term.Damping, reason, significance);

    /// <summary>From logarithms of power, frequency and damping to frequency, damping and root mean square: each is multiplied by its value, power by half of it.</summary>
    private static Mode ModeOf(SpectrumLines lines, SpectralTerm term, Matrix<double> logs, double clock)
    {
        double[] values = [Hertz(lines, term), term.Damping, Math.Exp(0.5 * term.LogPower)];
        double[] factors = [values[0], values[1], 0.5 * values[2]];
        return Mode.From(values, Flat(logs, [1, 2, 0], factors, clock), double.PositiveInfinity);
    }

    private static SteadyTone ToneOf(SpectrumLines lines, SpectralTerm term, Matrix<double> logs, double clock)
    {
        double[] values = [Hertz(lines, term), Math.Exp(0.5 * term.LogPower)];
        double[] flat = Flat(logs, [1, 0], [values[0], 0.5 * values[1]], clock);
        return new SteadyTone(JointEstimate.FromSi(["frequency", "root mean square"], ["Hz", "1"], values, flat, double.PositiveInfinity));
    }

    private static double[] Flat(Matrix<double> logs, int[] order, double[] factors, double clock)
    {
        int n = order.Length;
        double[] flat = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                flat[(n * i) + j] = 0.5 * (logs[order[i], order[j]] + logs[order[j], order[i]]) * factors[i] * factors[j];
            }
        }

        flat[0] += factors[0] * factors[0] * clock * clock;
        return flat;
    }

    /// <summary>Mean of ν·(P/E − 1)², 1 when the model holds, and how far noise alone lets it scatter.</summary>
    private static double Misfit(SpectrumLines lines, SpectralModel model, out double scatter)
    {
        double sum = 0;
        for (int i = 0; i < lines.Count; i++)
        {
            double surplus = (lines.Densities[i] / model.Expected[i]) - 1;
            sum += surplus * surplus;
        }

        scatter = Math.Sqrt((2 + (6 / lines.Averages)) * lines.Inflation / lines.Count);
        return lines.Averages * sum / lines.Count;
    }
}
