using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>
/// Turns t = R⁻¹Δh of the learned response R, and how far the bed then stands from level: cov = C(plane) + Σtₖtₗ·cov(Rᵢₖ, Rⱼₗ) + (P·u(turn))² + u²(play). Each turn is longer by the play that it first takes up.
/// JCGM 102:2011, 6.2.1.
/// </summary>
internal sealed class NextTurns
{
    private readonly PrincipalAxes _axes;
    private readonly AdjustingScrew[] _screws;

    private NextTurns(PrincipalAxes axes, AdjustingScrew[] screws, ScrewTurn[] turns, double[] response, double[] setting, double[] left, Finding? blocking)
    {
        _axes = axes;
        _screws = screws;
        Turns = turns;
        Response = response;
        Setting = setting;
        Left = left;
        Blocking = blocking;
    }

    internal ScrewTurn[] Turns { get; }

    /// <summary>Covariance of the moves at the screws that stems from the response and from the play, m².</summary>
    internal double[] Response { get; }

    /// <summary>The same from the setting of the turns.</summary>
    internal double[] Setting { get; }

    /// <summary>Covariance of what is left at the screws, the plane's share included.</summary>
    internal double[] Left { get; }

    internal Finding? Blocking { get; }

    internal static NextTurns Of(BedSupports supports, TrammingPlan plan, LearnedResponse learned, TrammingSequenceOptions options, double freedom, Func<int, int, (double Room, double Uncertainty)> play)
    {
        AdjustingScrew[] screws = supports.ScrewSpan.ToArray();
        int n = screws.Length;
        double[] inverse = new double[n * n];
        int unmoved = Array.FindIndex(screws, screw => !IsMoved(learned, Array.IndexOf(screws, screw)));
        if (unmoved >= 0 || !SmallInverse.TryInvert(learned.Mean, n, inverse))
        {
            int k = Math.Max(0, unmoved);
            var lead = Measured<Length>.FromSi(learned.Mean[(k * n) + k], Math.Sqrt(learned.Variance(k, k)), freedom);
            return new NextTurns(supports.Axes, screws, [], [], [], [], SequenceFindings.Unmoved(screws[k].Name, lead));
        }

        int still = Array.FindIndex(screws, screw => string.Equals(screw.Name, options.Next.KeepStill, StringComparison.Ordinal));
        double[] turns = Solve(plan, inverse, n, still);
        double[] response = learned.MoveCovariance(turns);
        double[] setting = new double[n * n];
        for (int k = 0; k < n; k++)
        {
            double sigma = turns[k] == 0 ? 0 : learned.Mean[(k * n) + k] * options.TurnUncertainty.Revolutions;
            setting[(k * n) + k] = sigma * sigma;
        }

        Measured<Length>[] taken = [.. screws.Select((_, k) => TakenUp(play(k, Math.Sign(turns[k] * learned.Mean[(k * n) + k])), freedom))];
        for (int k = 0; k < n; k++)
        {
            response[(k * n) + k] += taken[k].SiStandardUncertainty * taken[k].SiStandardUncertainty;
        }

        ScrewTurn[] made = [.. screws.Select((screw, k) => Turn(screw, k, turns, inverse, plan, learned, options, freedom, taken[k]))];
        return new NextTurns(supports.Axes, screws, made, response, setting, Remaining(supports, plan, response, setting, still), null);
    }

    /// <summary>Covariance of the slopes that moves at the screws make.</summary>
    internal SlopeCovariance Slopes(ReadOnlySpan<double> moves)
    {
        int n = _screws.Length;
        double xx = 0, yy = 0, xy = 0;
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                (double ax, double ay) = Gradient(_screws[i]);
                (double bx, double by) = Gradient(_screws[j]);
                xx += ax * bx * moves[(i * n) + j];
                yy += ay * by * moves[(i * n) + j];
                xy += ax * by * moves[(i * n) + j];
            }
        }

        return new SlopeCovariance(xx, yy, xy);
    }

    private static bool IsMoved(LearnedResponse learned, int k)
    {
        double lead = learned.Mean[(k * learned.Screws) + k];
        return Math.Abs(lead) > 2 * Math.Sqrt(learned.Variance(k, k));
    }

    /// <summary>A screw kept still keeps its height apart from what the others do to it: the rest is brought to where it then is.</summary>
    private static double[] Solve(TrammingPlan plan, double[] inverse, int n, int still)
    {
        double[] turns = new double[n];
        double[] common = new double[n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                turns[i] += inverse[(i * n) + j] * plan.Turns[j].HeightChange.SiValue;
                common[i] += inverse[(i * n) + j];
            }
        }

        if (still >= 0)
        {
            double shift = -turns[still] / common[still];
            for (int i = 0; i < n; i++)
            {
                turns[i] = i == still ? 0 : turns[i] + (shift * common[i]);
            }
        }

        return turns;
    }

    private static Measured<Length> TakenUp((double Room, double Uncertainty) play, double freedom) => play.Uncertainty > 0
        ? Measured<Length>.FromSi(play.Room, play.Uncertainty, freedom)
        : Measured.Exact(Length.FromMeters(play.Room));

    private static ScrewTurn Turn(
        AdjustingScrew screw, int k, double[] turns, double[] inverse, TrammingPlan plan, LearnedResponse learned, TrammingSequenceOptions options, double freedom, Measured<Length> taken)
    {
        int n = turns.Length;
        double lead = learned.Mean[(k * n) + k];
        BedMotion clockwise = lead > 0 ? screw.Clockwise : screw.Clockwise == BedMotion.Raises ? BedMotion.Lowers : BedMotion.Raises;
        double own = Math.Sqrt(learned.Variance(k, k));
        Measured<Length> known = own > 0 ? Measured<Length>.FromSi(Math.Abs(lead), own, freedom) : Measured.Exact(Length.FromMeters(Math.Abs(lead)));
        var learnedScrew = AdjustingScrew.At(screw.Name, screw.X, screw.Y, ScrewThread.FromLead(known, screw.Thread.Hand), clockwise);
        JointEstimate changes = plan.HeightChanges;
        double variance = 0;
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                variance += inverse[(k * n) + i] * inverse[(k * n) + j] * lead * lead * changes.Covariance(i, j);
            }

            variance += i == k ? 0 : turns[i] * turns[i] * learned.Variance(k, i);
        }

        Measured<Length> change = turns[k] == 0
            ? Measured.Exact(Length.Zero)
            : Measured<Length>.FromSi(turns[k] * lead, Math.Sqrt(Math.Max(0, variance)), freedom);
        return new ScrewTurn(learnedScrew, change, options.Next.SmallestUsefulTurn.Revolutions, taken);
    }

    private static double[] Remaining(BedSupports supports, TrammingPlan plan, double[] response, double[] setting, int still)
    {
        ReadOnlySpan<AdjustingScrew> screws = supports.ScrewSpan;
        int n = screws.Length;
        double[] map = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                double reference = still >= 0
                    ? supports.Axes.Influence(screws[still].XMeters, screws[still].YMeters, screws[j].XMeters, screws[j].YMeters)
                    : supports.Axes.Influence(supports.Axes.CentreX, supports.Axes.CentreY, screws[j].XMeters, screws[j].YMeters);
                map[(i * n) + j] = supports.Axes.Influence(screws[i].XMeters, screws[i].YMeters, screws[j].XMeters, screws[j].YMeters) - reference;
            }
        }

        double[] plane = Differences(plan, still, n);
        double[] left = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                double sum = plane[(i * n) + j];
                for (int a = 0; a < n; a++)
                {
                    for (int b = 0; b < n; b++)
                    {
                        sum += map[(i * n) + a] * map[(j * n) + b] * (response[(a * n) + b] + setting[(a * n) + b]);
                    }
                }

                left[(i * n) + j] = sum;
            }
        }

        return left;
    }

    /// <summary>Covariance of the plane's heights at the screws about their mean, or about the screw that stays.</summary>
    private static double[] Differences(TrammingPlan plan, int still, int n)
    {
        JointEstimate changes = plan.HeightChanges;
        double[] weight = [.. Enumerable.Range(0, n).Select(i => still < 0 ? 1.0 / n : i == still ? 1 : 0)];
        double[] result = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                for (int a = 0; a < n; a++)
                {
                    for (int b = 0; b < n; b++)
                    {
                        result[(i * n) + j] += ((i == a ? 1 : 0) - weight[a]) * ((j == b ? 1 : 0) - weight[b]) * changes.Covariance(a, b);
                    }
                }
            }
        }

        return result;
    }

    private (double X, double Y) Gradient(AdjustingScrew screw)
    {
        (double u, double v) = _axes.Local(screw.XMeters, screw.YMeters);
        double along = u / _axes.AlongMoment;
        double across = v / _axes.AcrossMoment;
        return ((along * _axes.Cosine) - (across * _axes.Sine), (along * _axes.Sine) + (across * _axes.Cosine));
    }
}
