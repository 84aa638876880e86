namespace PrinterMath.Resonance;

/// <summary>Largest residual over a box of frequency and damping, and the band below a level.</summary>
internal static class WorstCase
{
    private const int PointsForEachPeriod = 64;
    private const int DampingSteps = 4;
    private const double DampingStep = 0.001;

    internal static double Of(double[] amplitudes, double[] times, FrequencyBand band, double lowestDamping, double highestDamping)
    {
        int dampings = highestDamping > lowestDamping ? DampingSteps : 0;
        double width = band.UpperHertz - band.LowerHertz;
        int steps = width > 0 ? Math.Max(8, (int)Math.Ceiling(width * times[^1] * PointsForEachPeriod)) : 0;
        double worst = 0;
        for (int d = 0; d <= dampings; d++)
        {
            double zeta = dampings == 0 ? lowestDamping : lowestDamping + ((highestDamping - lowestDamping) * d / dampings);
            double At(double hertz) => Residual.Ratio(amplitudes, times, 2 * Math.PI * hertz, zeta);
            int best = 0;
            double largest = 0;
            for (int i = 0; i <= steps; i++)
            {
                double v = At(band.LowerHertz + (width * i / Math.Max(1, steps)));
                (best, largest) = v > largest ? (i, v) : (best, largest);
            }

            if (best > 0 && best < steps)
            {
                largest = Math.Max(largest, GoldenSection.Maximum(At, band.LowerHertz + (width * (best - 1) / steps), band.LowerHertz + (width * (best + 1) / steps), 40).Value);
            }

            worst = Math.Max(worst, largest);
        }

        return worst;
    }

    internal static bool TryBand(double[] amplitudes, double[] times, double hertz, double zeta, double level, out double low, out double high)
    {
        double At(double f) => Residual.Ratio(amplitudes, times, 2 * Math.PI * f, zeta);
        low = high = hertz;
        if (At(hertz) > level * (1 + 1e-9))
        {
            return false;
        }

        double step = 1 / (PointsForEachPeriod * 8.0 * Math.Max(times[^1], 1 / hertz));
        low = Edge(At, hertz, -step, 0, level);
        high = Edge(At, hertz, step, 10 * hertz, level);
        return true;
    }

    internal static bool TryDampings(double[] amplitudes, double[] times, double hertz, double zeta, double level, out double low, out double high)
    {
        double At(double z) => Residual.Ratio(amplitudes, times, 2 * Math.PI * hertz, z);
        low = high = zeta;
        if (At(zeta) > level * (1 + 1e-9))
        {
            return false;
        }

        low = Edge(At, zeta, -DampingStep, 0, level);
        high = Edge(At, zeta, DampingStep, ModeRange.LargestDamping, level);
        return true;
    }

    /// <summary>Walks until the level is passed, then bisects. A touch of the level within rounding (the hump of an extra-insensitive sequence) is not an edge.</summary>
    private static double Edge(Func<double, double> at, double from, double step, double end, double level)
    {
        double allowed = level * (1 + 1e-9);
        double inside = from;
        while (true)
        {
            double next = inside + step;
            if (step < 0 ? next <= end : next >= end)
            {
                return end;
            }

            if (at(next) > allowed)
            {
                double outside = next;
                for (int i = 0; i < 60; i++)
                {
                    double middle = (inside + outside) / 2;
                    (inside, outside) = at(middle) > level ? (inside, middle) : (middle, outside);
                }

                return inside;
            }

            inside = next;
        }
    }
}
