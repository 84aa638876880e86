namespace PrinterMath.Tension;

/// <summary>Turns a match into partials that a reader can use.</summary>
internal static class PartialList
{
    internal static List<Partial> Of(StringMatch match, List<SpectralPeak> peaks, double[] frequencies, StiffStringFit fit, int[] followed, PartialTracker track)
    {
        double strongest = match.Peaks.Max(p => peaks[p].Power);
        List<Partial> partials = [];
        for (int i = 0; i < match.Numbers.Length; i++)
        {
            SpectralPeak peak = peaks[match.Peaks[i]];
            double fitted = fit.Model.Partial(match.Numbers[i]);
            int place = Array.IndexOf(followed, i);
            partials.Add(new Partial(
                match.Numbers[i],
                frequencies[i],
                10 * Math.Log10(peak.Power / strongest),
                (frequencies[i] / fitted) - 1,
                fit.Weights[i] == 1,
                place < 0 ? 0 : Decay(track, place)));
        }

        return partials;
    }

    /// <summary>Power of the partials over all other power in the band, in dB.</summary>
    internal static double SignalToNoise(StringMatch match, List<SpectralPeak> peaks, PluckSpectrum spectrum)
    {
        double all = 0, signal = 0;
        foreach (double power in spectrum.Power)
        {
            all += power;
        }

        int reach = (int)Math.Ceiling(4 * spectrum.Resolution / spectrum.BinHertz), counted = -1;
        foreach (int p in match.Peaks)
        {
            int centre = (int)Math.Round(peaks[p].Frequency / spectrum.BinHertz);
            for (int k = Math.Max(counted + 1, centre - reach); k <= Math.Min(spectrum.Power.Length - 1, centre + reach); k++)
            {
                signal += spectrum.Power[k];
                counted = k;
            }
        }

        return 10 * Math.Log10(signal / Math.Max(all - signal, all * 1e-12));
    }

    /// <summary>1/e time of the amplitude by a line through its logarithm, weighted by power; zero when it does not decay.</summary>
    private static double Decay(PartialTracker track, int partial)
    {
        double s = 0, st = 0, sl = 0, stt = 0, stl = 0;
        for (int j = 0; j < track.Blocks; j++)
        {
            double power = track.PowerAt(j, partial);
            if (power > 0)
            {
                double log = 0.5 * Math.Log(power), w = power;
                s += w;
                st += w * j;
                sl += w * log;
                stt += w * j * j;
                stl += w * j * log;
            }
        }

        double determinant = (s * stt) - (st * st);
        double slope = determinant > 0 ? ((s * stl) - (st * sl)) / determinant : 0;
        return slope < 0 ? -track.HopSeconds / slope : 0;
    }
}
