namespace PrinterMath.Resonance;

/// <summary>Follows the solution of equations from no damping to the damping wanted.</summary>
internal static class Continuation
{
    private const double FirstStep = 0.02;
    private const double LongestStep = 0.05;
    private const double ShortestStep = 1e-5;

    /// <summary>
    /// Moves a solution without damping to the damping of the conditions, by secants and Newton's method, in steps of at most 0.05 of damping ratio that are halved where they fail.
    /// </summary>
    /// <param name="equations">The equations.</param>
    /// <param name="unknowns">The start; the solution.</param>
    /// <param name="damping">Damping ratio wanted, for the scale of steps.</param>
    /// <returns>The share of the damping that was reached; 1 when all of it was.</returns>
    internal static double Follow(ResidualEquations equations, ref double[] unknowns, double damping)
    {
        if (!TryAt(equations, 0, unknowns, out double[] now))
        {
            return double.NaN;
        }

        double reached = 0, step = FirstStep, earlier = 0;
        double[]? before = null;
        while (reached * damping < damping)
        {
            double next = Math.Min(1, reached + (step / damping));
            double[] guess = (double[])now.Clone();
            for (int i = 0; before is not null && i < guess.Length; i++)
            {
                guess[i] += (now[i] - before[i]) * (next - reached) / (reached - earlier);
            }

            if (TryAt(equations, next, guess, out double[] found))
            {
                (before, earlier, now, reached) = (now, reached, found, next);
                step = Math.Min(LongestStep, 1.5 * step);
            }
            else if ((step /= 2) < ShortestStep)
            {
                break;
            }
        }

        unknowns = now;
        return damping > 0 ? reached : 1;
    }

    private static bool TryAt(ResidualEquations equations, double share, double[] guess, out double[] found)
    {
        found = (double[])guess.Clone();
        equations.DampingShare = share;
        return NewtonIteration.TrySolve(equations.Evaluate, found) && equations.IsSequence(found);
    }
}
