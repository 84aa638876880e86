using System.Numerics;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Turns fitted poles of a response into modes and rejected poles with their uncertainty.</summary>
internal sealed class ResponseReport
{
    private const double LargestDamping = 0.35;
    private const double MisfitLimit = 6;
    private const double SameFrequency = 0.02;
    private const double SameDamping = 0.3;
    private readonly ResponseProblem _problem;
    private readonly ResponseSelection _selection;
    private readonly int _derivatives;
    private readonly double _clock;

    private ResponseReport(ResponseProblem problem, ResponseSelection selection, int derivatives, double clock)
    {
        _problem = problem;
        _selection = selection;
        _derivatives = derivatives;
        _clock = clock;
    }

    private ResponseModel Model => _selection.Model;

    private double Spacing => (_problem.Frequencies[^1] - _problem.Frequencies[0]) / (_problem.Count - 1);

    /// <param name="lines">The response.</param>
    /// <param name="power">Power of ω that the form has far above a mode.</param>
    /// <param name="options">Null for the defaults.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static ResponseFit Of(ResponseLines lines, int power, ResponseFitOptions? options, CancellationToken cancellation)
    {
        options ??= new ResponseFitOptions();
        ResponseLines estimated = lines.AsEstimated();
        (int first, int last) = options.Lines(estimated);
        if (estimated.Values[first..(last + 1)].All(value => value == Complex.Zero))
        {
            FrequencyBand band = new(estimated.Frequencies[first], estimated.Frequencies[last]);
            return new ResponseFit([], [], [ModeReport.NoneInBand(band)], band, new Complex[last - first + 1], 0);
        }

        ResponseProblem problem = new(estimated, power - lines.Derivatives, first, last);
        var selection = ResponseSelection.Of(problem, options.MostModes, options.FalseAlarmProbability, cancellation);
        return new ResponseReport(problem, selection, lines.Derivatives, options.RelativeClockUncertainty).Fit();
    }

    private ResponseFit Fit()
    {
        double[] f = _problem.Frequencies;
        FrequencyBand band = new(f[0], f[^1]);
        List<Finding> findings = [];
        double scale = Scale(findings);
        List<(Mode Mode, Complex Residue)> modes = [];
        List<RejectedPole> rejected = [.. _selection.Dropped.Select(drop => new RejectedPole(drop.Pole.Hertz, drop.Pole.Damping, RejectionReason.NotSignificant, drop.Significance))];
        double[,]? covariance = Model.Poles.Length > 0 ? Model.Covariance() : null;
        for (int m = 0; covariance is not null && m < Model.Poles.Length; m++)
        {
            ResponsePole pole = Model.Poles[m];
            Mode mode = ModeOf(pole, covariance, 4 * m, scale);
            if (ReasonAgainst(pole, mode, band) is { } reason)
            {
                rejected.Add(new RejectedPole(pole.Hertz, pole.Damping, reason, _selection.Significance(m)));
                continue;
            }

            modes.Add((mode, pole.Residue * Complex.Pow(pole.Place, _derivatives)));
            if (mode.DampingRatio.RelativeStandardUncertainty > 0.5)
            {
                findings.Add(ModeReport.DampingUnknown(mode));
            }
        }

        if (modes.Count == 0)
        {
            findings.Add(ModeReport.NoneInBand(band));
        }
        else if (_selection.MoreToFind)
        {
            findings.Add(ModeReport.MoreToFind(_selection.OneMore!.Poles[^1].Hertz, Model.Poles.Length));
        }

        Complex[] fitted = Model.Fitted();
        for (int k = 0; k < fitted.Length; k++)
        {
            fitted[k] *= Complex.Pow(new Complex(0, 2 * Math.PI * f[k]), _derivatives);
        }

        return new ResponseFit(modes, rejected, findings, band, fitted, Math.Clamp(1 - (WeightedColumns.Dot(Model.Residual, Model.Residual) / _problem.TotalSum), 0, 1));
    }

    /// <summary>Variance of a weighted reading: 1 where errors are known and explain what is left; else what is left.</summary>
    private double Scale(List<Finding> findings)
    {
        double left = Model.Sum / Model.Freedom;
        if (!_problem.Errors.Known)
        {
            return left;
        }

        if (left <= 1 + (MisfitLimit * Math.Sqrt(2 * _problem.Errors.Inflation / Model.Freedom)))
        {
            return 1;
        }

        if (Model.Poles.Length > 0)
        {
            findings.Add(ModeReport.ResponseMisfit(left));
        }

        return left;
    }

    private RejectionReason? ReasonAgainst(ResponsePole pole, Mode mode, FrequencyBand band) =>
        pole.Damping > LargestDamping ? RejectionReason.TooWide
        : pole.Hertz < band.LowerHertz + (Spacing / 2) || pole.Hertz > band.UpperHertz - (Spacing / 2) ? RejectionReason.AtEdge
        : mode.DampingRatio.RelativeStandardUncertainty > 1 || mode.Amplitude.RelativeStandardUncertainty > 1 ? RejectionReason.Unresolved
        : !Stays(pole, mode) ? RejectionReason.Unstable
        : null;

    private bool Stays(ResponsePole pole, Mode mode) => _selection.OneMore is not { } more || more.Poles.Any(other =>
        Math.Abs(other.Hertz - pole.Hertz) <= Math.Max(SameFrequency * pole.Hertz, 3 * mode.Frequency.SiStandardUncertainty)
        && Math.Abs(other.Damping - pole.Damping) <= Math.Max(SameDamping * pole.Damping, 3 * mode.DampingRatio.SiStandardUncertainty));

    /// <summary>From ln ω_n, ln ζ, Re r and Im r to frequency, damping ratio and height |r|·ω_n^(derivatives − 1)/ζ.</summary>
    private Mode ModeOf(ResponsePole pole, double[,] covariance, int at, double scale)
    {
        double height = pole.Height * Math.Pow(pole.Omega, _derivatives);
        double size = pole.Residue.Magnitude * pole.Residue.Magnitude;
        double[][] slopes =
        [
            [pole.Hertz, 0, 0, 0],
            [0, pole.Damping, 0, 0],
            [height * (_derivatives - 1), -height, height * pole.Residue.Real / size, height * pole.Residue.Imaginary / size],
        ];
        double[] flat = new double[9];
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = 0;
                for (int k = 0; k < 16; k++)
                {
                    sum += scale * slopes[i][k / 4] * slopes[j][k % 4] * covariance[at + (k / 4), at + (k % 4)];
                }

                flat[(3 * i) + j] = flat[(3 * j) + i] = sum;
            }
        }

        flat[0] += Math.Pow(pole.Hertz * _clock, 2);
        return Mode.From([pole.Hertz, pole.Damping, height], flat, _problem.Errors.Known ? double.PositiveInfinity : Model.Freedom);
    }
}
