using MathNet.Numerics.Distributions;

namespace PrinterMath.Resonance;

/// <summary>Adds terms to a noise floor one at a time, as long as noise alone would hardly show the like, and drops those that later ones make needless.</summary>
/// <remarks>
/// Twice the gain in log-likelihood, divided by the inflation of correlated lines, is χ² with as many degrees of freedom as the term has parameters; the
/// false-alarm probability is shared among all lines (Bonferroni). Tone and mode are fitted side by side: a mode must beat the tone, which is a mode of no width.
/// </remarks>
internal sealed class SpectralSelection
{
    private const int MostTones = 20;
    private const int Rounds = 60;
    private const int TriedRounds = 40;
    private const double LeastGain = 1e-6;
    private const double LeastTriedGain = 1e-2;
    private const int FewTerms = 3;
    private const double Narrow = 0.3;
    private const double WidthRisk = 1e-3;
    private readonly SpectrumLines _lines;
    private readonly CancellationToken _cancellation;
    private readonly double _needed;
    private readonly double _neededForWidth;

    private SpectralSelection(SpectrumLines lines, double falseAlarm, CancellationToken cancellation)
    {
        _lines = lines;
        _cancellation = cancellation;
        _needed = 0.5 * lines.Inflation * ChiSquared.InvCDF(3, 1 - (falseAlarm / lines.Count));
        _neededForWidth = 0.5 * lines.Inflation * ChiSquared.InvCDF(1, 1 - WidthRisk);
        Model = Polished(SpectralModel.Floor(lines));
    }

    internal SpectralModel Model { get; private set; }

    /// <summary>Terms that were fitted and found not significant, with gain over need.</summary>
    internal List<(SpectralTerm Term, double Significance)> Dropped { get; } = [];

    internal static SpectralSelection Of(SpectrumLines lines, ModalFitOptions options, CancellationToken cancellation)
    {
        SpectralSelection selection = new(lines, options.FalseAlarmProbability, cancellation);
        while (selection.HasRoom(options.MostModes) && selection.Add())
        {
        }

        selection.Prune();
        return selection;
    }

    /// <summary>Gain that removing a term would lose, over what is needed.</summary>
    internal double Significance(int index) => (Model.LogLikelihood - Refitted(index).LogLikelihood) / _needed;

    private bool HasRoom(int mostModes) => Model.Terms.Count(t => !t.IsTone) < mostModes && Model.Terms.Count < mostModes + MostTones;

    private bool Add()
    {
        if (SpectralRise.Highest(_lines, Model) is not { } rise)
        {
            return false;
        }

        SpectralModel? tone = null, mode = null;
        foreach (SpectralTerm start in rise.Starts(_lines, Model))
        {
            SpectralModel fitted = Tried(start);
            (tone, mode) = start.IsTone ? (Better(tone, fitted), mode) : (tone, Better(mode, fitted));
        }

        SpectralTerm found = mode!.Terms[^1];
        if (found.BandwidthLines(_lines.SegmentLength) < Narrow)
        {
            tone = Better(tone, Tried(SpectralTerm.Tone(Math.Exp(found.LogPower), found.Angle)));
        }

        SpectralModel chosen = mode.LogLikelihood > tone!.LogLikelihood + _neededForWidth ? mode : tone;
        double gain = chosen.LogLikelihood - Model.LogLikelihood;
        if (gain < _needed)
        {
            Dropped.Add((chosen.Terms[^1], gain / _needed));
            return false;
        }

        Model = Polished(chosen);
        if (Model.Terms.Count <= FewTerms)
        {
            Model = Better(Model, Polished(chosen.WithFloor(_lines, SpectralModel.Floor(_lines))));
        }

        return true;
    }

    private SpectralModel Tried(SpectralTerm start) => WhittleFit.Maximise(_lines, Model.Plus(_lines, start), Model.Terms.Count, TriedRounds, LeastTriedGain, _cancellation);

    private SpectralModel Polished(SpectralModel model) => WhittleFit.Maximise(_lines, model, 0, Rounds, LeastGain, _cancellation);

    private void Prune()
    {
        for (int i = Model.Terms.Count - 1; i >= 0; i--)
        {
            SpectralModel without = Refitted(i);
            double gain = Model.LogLikelihood - without.LogLikelihood;
            if (gain < _needed)
            {
                Dropped.Add((Model.Terms[i], gain / _needed));
                Model = without;
            }
        }
    }

    private SpectralModel Refitted(int without) => Polished(Model.Without(_lines, without));

    private static SpectralModel Better(SpectralModel? one, SpectralModel other) => one is null || other.LogLikelihood > one.LogLikelihood ? other : one;
}
