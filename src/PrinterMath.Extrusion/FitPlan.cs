namespace PrinterMath.Extrusion;

/// <summary>How many more trials a wanted interval takes.</summary>
internal static class FitPlan
{
    /// <summary>Half the width of a normal 95 % interval in standard deviations.</summary>
    private const double NormalFactor = 1.959964;

    /// <summary>Fisher information of one trial at µ, in units of 1/σ²: φ(0)²/(¼) = 2/π.</summary>
    private const double Information = 2 / Math.PI;

    internal static bool TryGetTrials(FitEstimate estimate, double halfWidth, double step, out int trials)
    {
        double wanted = halfWidth / NormalFactor;
        double u = estimate.Flow.SiStandardUncertainty, sigma = estimate.TransitionDeviation.SiValue;
        trials = 0;
        if (u <= wanted)
        {
            return true;
        }

        // A transition much sharper than the step leaves µ anywhere between two flows.
        if (sigma < step / 4 && halfWidth < 0.475 * step)
        {
            return false;
        }

        double turn = Math.Min(u, Math.Max(wanted, sigma));
        double halvings = Math.Log2(u / turn);
        double averaging = ((1 / (wanted * wanted)) - (1 / (turn * turn))) * sigma * sigma / Information;
        double count = Math.Ceiling(halvings + Math.Max(0, averaging));
        trials = count < int.MaxValue ? (int)count : 0;
        return trials > 0;
    }
}
