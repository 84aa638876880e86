namespace PrinterMath.Resonance;

/// <summary>Sequences of impulses 1, −1, 1, ... for a mode of period 1 s.</summary>
internal static class UnityMagnitudeDesign
{
    /// <summary>Undamped: impulses at 0, T/6, T/3.</summary>
    internal static (double[] Amplitudes, double[] Times) ZeroVibration(double dampingRatio)
    {
        double[] amplitudes = [1, -1, 1];
        var equations = new ResidualEquations(3, [ResidualCondition.At(ConditionKind.Zero, dampingRatio, 1)], 1, amplitudes);
        return SequenceDesign.Followed(equations, [1.0 / 6, 1.0 / 3], dampingRatio);
    }

    /// <summary>Residual and slope are zero at the design frequency.</summary>
    internal static (double[] Amplitudes, double[] Times) ZeroVibrationDerivative(double dampingRatio)
    {
        double[] amplitudes = [1, -1, 1, -1, 1];
        ResidualCondition[] conditions =
        [
            ResidualCondition.At(ConditionKind.Zero, dampingRatio, 1),
            ResidualCondition.At(ConditionKind.FlatZero, dampingRatio, 1),
        ];
        return SequenceDesign.Followed(new ResidualEquations(5, conditions, 1, amplitudes), Undamped(0), dampingRatio);
    }

    /// <summary>An extreme of height V at the design frequency and one zero either side.</summary>
    internal static (double[] Amplitudes, double[] Times) ExtraInsensitive(double dampingRatio, double tolerance)
    {
        double[] amplitudes = [1, -1, 1, -1, 1];
        ResidualCondition[] conditions =
        [
            ResidualCondition.AtUnknown(ConditionKind.Zero, dampingRatio, 0),
            ResidualCondition.AtUnknown(ConditionKind.Zero, dampingRatio, 1),
            ResidualCondition.At(ConditionKind.Level, dampingRatio, 1),
            ResidualCondition.At(ConditionKind.Extreme, dampingRatio, 1),
        ];
        double[] times = Undamped(tolerance);
        double half = times[1], gap = times[1] - times[0];
        double At(double r) => 1 - (2 * Math.Cos(2 * Math.PI * r * gap)) + (2 * Math.Cos(2 * Math.PI * r * half));
        double[] start = [.. times, Crossing(At, 1, 0.3), Crossing(At, 1, 1.6)];
        return SequenceDesign.Followed(new ResidualEquations(5, conditions, tolerance, amplitudes), start, dampingRatio);
    }

    /// <summary>
    /// Undamped and symmetric about the middle impulse at h, its neighbours g away: residual 1 − 2cos(2πrg) + 2cos(2πrh) with the value ±V and no slope at r = 1. Newton's method in
    /// (g, h), followed in the value from the zero of both.
    /// </summary>
    private static double[] Undamped(double value)
    {
        double[] x = [0.2767, 0.3662];
        const int Steps = 10;
        for (int step = 0; step <= Steps; step++)
        {
            double wanted = -value * step / Steps;
            _ = NewtonIteration.TrySolve(
                (u, f, j) =>
                {
                    (double sg, double cg) = Math.SinCos(2 * Math.PI * u[0]);
                    (double sh, double ch) = Math.SinCos(2 * Math.PI * u[1]);
                    const double W = 2 * Math.PI;
                    f[0] = 1 - (2 * cg) + (2 * ch) - wanted;
                    f[1] = (u[0] * sg) - (u[1] * sh);
                    (j[0, 0], j[0, 1]) = (2 * W * sg, -2 * W * sh);
                    (j[1, 0], j[1, 1]) = (sg + (W * u[0] * cg), -sh - (W * u[1] * ch));
                },
                x);
        }

        return [x[1] - x[0], x[1], x[1] + x[0], 2 * x[1]];
    }

    private static double Crossing(Func<double, double> at, double inside, double outside)
    {
        bool sign = at(inside) > 0;
        for (int i = 0; i < 60; i++)
        {
            double middle = (inside + outside) / 2;
            (inside, outside) = at(middle) > 0 == sign ? (middle, outside) : (inside, middle);
        }

        return inside;
    }
}
