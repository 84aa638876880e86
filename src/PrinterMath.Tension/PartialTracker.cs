using System.Numerics;

namespace PrinterMath.Tension;

/// <summary>Follows partials through the window: complex amplitude in half-overlapping Hann blocks, several partials at a time.</summary>
/// <remarks>
/// A block of three periods of f0 puts the zeros of its response on the neighbouring partials. The phase step from block to block is the frequency in
/// between, the fall of the magnitude is the decay.
/// </remarks>
internal sealed class PartialTracker
{
    private const int PeriodsPerBlock = 3;
    private const int MostBlocks = 32;

    private PartialTracker(double[] re, double[] im, int partials, double hopSeconds)
    {
        Re = re;
        Im = im;
        Partials = partials;
        HopSeconds = hopSeconds;
        Blocks = partials == 0 ? 0 : re.Length / partials;
    }

    internal double[] Re { get; }

    internal double[] Im { get; }

    internal int Partials { get; }

    internal int Blocks { get; }

    internal double HopSeconds { get; }

    internal Complex At(int block, int partial) => new(Re[(block * Partials) + partial], Im[(block * Partials) + partial]);

    internal double PowerAt(int block, int partial)
    {
        int i = (block * Partials) + partial;
        return (Re[i] * Re[i]) + (Im[i] * Im[i]);
    }

    /// <summary>Mean frequency between a block and the next, less the frequency followed, in Hz.</summary>
    internal double OffsetAfter(int block, int partial)
    {
        int i = (block * Partials) + partial, j = i + Partials;
        double cross = (Im[j] * Re[i]) - (Re[j] * Im[i]), dot = (Re[j] * Re[i]) + (Im[j] * Im[i]);
        return Math.Atan2(cross, dot) / (2 * Math.PI * HopSeconds);
    }

    internal static PartialTracker Follow(ReadOnlySpan<double> samples, double rate, ReadOnlySpan<double> frequencies, double f0)
    {
        int half = (int)Math.Ceiling(Math.Max(PeriodsPerBlock / f0 * rate, 2.0 * samples.Length / MostBlocks) / 2);
        int halves = samples.Length / half;
        int blocks = Math.Max(0, halves - 1);
        double[] re = new double[blocks * frequencies.Length];
        double[] im = new double[re.Length];
        double[] rise = new double[half];
        for (int i = 0; i < half; i++)
        {
            rise[i] = 0.5 - (0.5 * Math.Cos(Math.PI * (i + 0.5) / half));
        }

        int lanes = Vector<double>.Count;
        for (int first = 0; first < frequencies.Length && blocks > 0; first += lanes)
        {
            int used = Math.Min(lanes, frequencies.Length - first);
            Lanes(samples, rise, halves, frequencies.Slice(first, used), rate, first, frequencies.Length, re, im);
        }

        return new PartialTracker(re, im, frequencies.Length, half / rate);
    }

    private static void Lanes(
        ReadOnlySpan<double> samples, double[] rise, int halves, ReadOnlySpan<double> frequencies, double rate, int first, int partials, double[] re, double[] im)
    {
        double[] cosine = new double[Vector<double>.Count], sine = new double[Vector<double>.Count];
        for (int i = 0; i < frequencies.Length; i++)
        {
            (sine[i], cosine[i]) = Math.SinCos(-2 * Math.PI * frequencies[i] / rate);
        }

        Vector<double> stepC = new(cosine), stepS = new(sine), c = Vector<double>.One, s = Vector<double>.Zero;
        for (int h = 0; h < halves; h++)
        {
            Vector<double> allRe = Vector<double>.Zero, allIm = Vector<double>.Zero, upRe = Vector<double>.Zero, upIm = Vector<double>.Zero;
            ReadOnlySpan<double> stretch = samples.Slice(h * rise.Length, rise.Length);
            for (int i = 0; i < stretch.Length; i++)
            {
                Vector<double> xc = c * stretch[i], xs = s * stretch[i];
                allRe += xc;
                allIm += xs;
                upRe += xc * rise[i];
                upIm += xs * rise[i];
                (c, s) = ((c * stepC) - (s * stepS), (s * stepC) + (c * stepS));
            }

            for (int p = 0; p < frequencies.Length; p++)
            {
                Put(h, upRe[p], upIm[p]);
                Put(h - 1, allRe[p] - upRe[p], allIm[p] - upIm[p]);

                void Put(int block, double real, double imaginary)
                {
                    if (block >= 0 && block < halves - 1)
                    {
                        re[(block * partials) + first + p] += real;
                        im[(block * partials) + first + p] += imaginary;
                    }
                }
            }
        }
    }
}
