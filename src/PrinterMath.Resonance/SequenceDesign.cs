namespace PrinterMath.Resonance;

/// <summary>Impulses for a mode of period 1 s: amplitudes and times in undamped periods.</summary>
internal static class SequenceDesign
{
    /// <summary>A_i ∝ C(k, i)·Kⁱ at i·T_d/2 with K = exp(−πζ/√(1 − ζ²)): k zero-vibration pairs in a row. Singer, Seering 1990.</summary>
    internal static (double[] Amplitudes, double[] Times) ZeroVibration(double dampingRatio, int pairs)
    {
        double root = Math.Sqrt(1 - (dampingRatio * dampingRatio));
        double ratio = Math.Exp(-Math.PI * dampingRatio / root);
        double[] amplitudes = new double[pairs + 1];
        double[] times = new double[pairs + 1];
        double binomial = 1;
        double total = Math.Pow(1 + ratio, pairs);
        for (int i = 0; i <= pairs; i++)
        {
            amplitudes[i] = binomial * Math.Pow(ratio, i) / total;
            times[i] = i / (2 * root);
            binomial = binomial * (pairs - i) / (i + 1);
        }

        return (amplitudes, times);
    }

    /// <summary>C = S = 0 at a frequency below and one above, residual V at the design frequency, last impulse at T_d; followed from the undamped closed form.</summary>
    internal static (double[] Amplitudes, double[] Times) ExtraInsensitive(double dampingRatio, double tolerance)
    {
        (double[] amplitudes, double[] zeros, _) = ChebyshevSequence.Undamped(2, tolerance);
        ResidualCondition[] conditions =
        [
            ResidualCondition.AtUnknown(ConditionKind.Zero, dampingRatio, 0),
            ResidualCondition.AtUnknown(ConditionKind.Zero, dampingRatio, 1),
            ResidualCondition.At(ConditionKind.Level, dampingRatio, 1),
            ResidualCondition.At(ConditionKind.LastAtDampedPeriod, dampingRatio, 1),
        ];
        return Followed(new ResidualEquations(3, conditions, tolerance), [.. amplitudes, 0.5, 1, .. zeros], dampingRatio);
    }

    /// <summary>C = S = 0 at humps + 1 frequencies and extremes of height V between them, the middle one at the design frequency; followed from the undamped closed form.</summary>
    internal static (double[] Amplitudes, double[] Times) MultiHump(double dampingRatio, int humps, double tolerance)
    {
        int pairs = humps + 1;
        (double[] amplitudes, double[] zeros, double[] extremes) = ChebyshevSequence.Undamped(pairs, tolerance);
        List<ResidualCondition> conditions = [];
        List<double> frequencies = [];
        void Add(double[] at, params ConditionKind[] kinds)
        {
            for (int i = 0; i < at.Length; i++)
            {
                bool middle = (2 * i) + 1 == at.Length;
                conditions.AddRange(kinds.Select(kind => middle
                    ? ResidualCondition.At(kind, dampingRatio, 1)
                    : ResidualCondition.AtUnknown(kind, dampingRatio, frequencies.Count)));
                if (!middle)
                {
                    frequencies.Add(at[i]);
                }
            }
        }

        Add(zeros, ConditionKind.Zero);
        Add(extremes, ConditionKind.Level, ConditionKind.Extreme);
        double[] start = [.. amplitudes, .. Enumerable.Range(1, pairs).Select(i => i / 2.0), .. frequencies];
        return Followed(new ResidualEquations(pairs + 1, [.. conditions], tolerance), start, dampingRatio);
    }

    /// <summary>C = S = 0 at two modes; times in seconds.</summary>
    internal static (double[] Amplitudes, double[] Times) TwoModes(double one, double dampingRatio, double other, double otherDampingRatio)
    {
        double unit = 1 / (one + other);
        double end = 1 / (2 - (2 * Math.Cos(2 * Math.PI * one * unit)));
        ResidualCondition[] conditions =
        [
            ResidualCondition.At(ConditionKind.Zero, dampingRatio, one * unit),
            ResidualCondition.At(ConditionKind.Zero, otherDampingRatio, other * unit),
        ];
        (double[] amplitudes, double[] times) = Followed(
            new ResidualEquations(3, conditions, 1), [end, 1 - (2 * end), end, 1, 2], Math.Max(dampingRatio, otherDampingRatio));
        return (amplitudes, [.. times.Select(time => time * unit)]);
    }

    /// <summary>The solution at the damping wanted, or the refusal that says how far it goes.</summary>
    internal static (double[] Amplitudes, double[] Times) Followed(ResidualEquations equations, double[] start, double dampingRatio)
    {
        double reached = Continuation.Follow(equations, ref start, dampingRatio);
        return reached >= 1
            ? (equations.Amplitudes(start), equations.Times(start))
            : throw Guard.Out(
                nameof(dampingRatio),
                dampingRatio,
                FormattableString.Invariant($"at most {Math.Floor(reached * dampingRatio * 1000) / 1000:0.000}, where a sequence of this kind ceases to exist"));
    }
}
