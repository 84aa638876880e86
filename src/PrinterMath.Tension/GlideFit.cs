namespace PrinterMath.Tension;

/// <summary>How the frequency of all followed partials moves together over the window, and how steady it is.</summary>
internal sealed class GlideFit
{
    private GlideFit(double change, double changeUncertainty, double spread, double scatter, double degreesOfFreedom, double limit, double limitUncertainty)
    {
        RelativeLimit = limit;
        LimitUncertainty = limitUncertainty;
        RelativeChange = change;
        ChangeUncertainty = changeUncertainty;
        RelativeSpread = spread;
        RelativeScatter = scatter;
        DegreesOfFreedom = degreesOfFreedom;
    }

    /// <summary>Relative change of frequency from the beginning to the end of the heard part; negative when it falls.</summary>
    internal double RelativeChange { get; }

    internal double ChangeUncertainty { get; }

    /// <summary>Standard deviation over time of the frequency along the fitted line: what "the" frequency of the window leaves open.</summary>
    internal double RelativeSpread { get; }

    /// <summary>Standard uncertainty of the mean relative frequency from its scatter about the line.</summary>
    internal double RelativeScatter { get; }

    internal double DegreesOfFreedom { get; }

    /// <summary>Relative offset of the small-amplitude limit from the frequency followed: the intercept of a line over power.</summary>
    internal double RelativeLimit { get; }

    internal double LimitUncertainty { get; }

    /// <summary>
    /// Weighted line through the frequency between blocks relative to the fitted one; weights are those of a phase difference, f²/(1/A₁² + 1/A₂²)/noise.
    /// Null when there are fewer than three steps.
    /// </summary>
    internal static GlideFit? Of(PartialTracker track, ReadOnlySpan<double> frequencies, ReadOnlySpan<double> fitted, ReadOnlySpan<double> noise)
    {
        int steps = track.Blocks - 1;
        if (steps < 3)
        {
            return null;
        }

        double[] ratio = new double[steps], weight = new double[steps], power = new double[steps];
        for (int j = 0; j < steps; j++)
        {
            for (int p = 0; p < frequencies.Length; p++)
            {
                double a = track.PowerAt(j, p), b = track.PowerAt(j + 1, p);
                double w = a > 0 && b > 0 ? frequencies[p] * frequencies[p] / ((1 / a) + (1 / b)) / noise[p] : 0;
                weight[j] += w;
                ratio[j] += w * (((frequencies[p] + track.OffsetAfter(j, p)) / fitted[p]) - 1);
                power[j] += a + b;
            }

            ratio[j] /= weight[j] > 0 ? weight[j] : 1;
        }

        return Fit(ratio, weight, power);
    }

    private static GlideFit? Fit(double[] ratio, double[] weight, double[] power)
    {
        double sum = weight.Sum();
        if (!(sum > 0))
        {
            return null;
        }

        double squared = 0;
        double[] time = new double[ratio.Length];
        for (int j = 0; j < ratio.Length; j++)
        {
            weight[j] /= sum;
            squared += weight[j] * weight[j];
            time[j] = j;
        }

        double effective = 1 / squared;
        double correction = effective / Math.Max(1, effective - 2);
        WeightedLine overTime = WeightedLine.Through(time, ratio, weight, correction);
        WeightedLine overPower = WeightedLine.Through(power, ratio, weight, correction);
        double s = overTime.Slope, u = overTime.SlopeUncertainty;
        double range = overTime.Deviation * Math.Sqrt(12);
        return new GlideFit(
            s * range,
            u * range,
            overTime.Deviation * Math.Sqrt(Math.Max(0, (s * s) - (u * u))),
            overTime.MeanUncertainty,
            Math.Max(1, effective - 2),
            overPower.Mean - (overPower.Slope * overPower.Centre),
            Math.Sqrt(Math.Pow(overPower.MeanUncertainty, 2) + Math.Pow(overPower.SlopeUncertainty * overPower.Centre, 2)));
    }
}
