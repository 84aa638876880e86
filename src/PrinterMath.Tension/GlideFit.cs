namespace PrinterMath.Tension;

/// <summary>How the frequency of all followed partials moves together over the window, and how steady it is.</summary>
internal sealed class GlideFit
{
    private GlideFit(double change, double changeUncertainty, double spread, double scatter, double degreesOfFreedom)
    {
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

    /// <summary>
    /// Weighted line through the relative frequency between blocks; weights are those of a phase difference, f²/(1/A₁² + 1/A₂²).
    /// Null when there are fewer than three steps.
    /// </summary>
    internal static GlideFit? Of(PartialTracker track, ReadOnlySpan<double> frequencies)
    {
        int steps = track.Blocks - 1;
        if (steps < 3)
        {
            return null;
        }

        double[] ratio = new double[steps], weight = new double[steps];
        for (int j = 0; j < steps; j++)
        {
            for (int p = 0; p < frequencies.Length; p++)
            {
                double a = track.PowerAt(j, p), b = track.PowerAt(j + 1, p);
                double w = a > 0 && b > 0 ? frequencies[p] * frequencies[p] / ((1 / a) + (1 / b)) : 0;
                weight[j] += w;
                ratio[j] += w * track.OffsetAfter(j, p) / frequencies[p];
            }

            ratio[j] /= weight[j] > 0 ? weight[j] : 1;
        }

        return Line(ratio, weight);
    }

    private static GlideFit? Line(double[] ratio, double[] weight)
    {
        double sum = weight.Sum();
        if (!(sum > 0))
        {
            return null;
        }

        double meanT = 0, meanR = 0, squared = 0;
        for (int j = 0; j < ratio.Length; j++)
        {
            weight[j] /= sum;
            meanT += weight[j] * j;
            meanR += weight[j] * ratio[j];
            squared += weight[j] * weight[j];
        }

        double stt = 0, str = 0;
        for (int j = 0; j < ratio.Length; j++)
        {
            stt += weight[j] * (j - meanT) * (j - meanT);
            str += weight[j] * (j - meanT) * (ratio[j] - meanR);
        }

        double slope = stt > 0 ? str / stt : 0;
        double residuals = 0, ofMean = 0, ofSlope = 0;
        for (int j = 0; j < ratio.Length; j++)
        {
            double r = ratio[j] - meanR - (slope * (j - meanT));
            residuals += weight[j] * r * r;
            ofMean += weight[j] * weight[j] * r * r;
            ofSlope += weight[j] * weight[j] * (j - meanT) * (j - meanT) * r * r;
        }

        double effective = 1 / squared;
        double correction = effective / Math.Max(1, effective - 2);
        double uSlope = stt > 0 ? Math.Sqrt(ofSlope * correction) / stt : 0;
        double deviation = Math.Sqrt(stt);
        double spread = deviation * Math.Sqrt(Math.Max(0, (slope * slope) - (uSlope * uSlope)));
        double range = deviation * Math.Sqrt(12);
        return new GlideFit(slope * range, uSlope * range, spread, Math.Sqrt(ofMean * correction), Math.Max(1, effective - 2));
    }
}
