using UnitsNet;

namespace PrinterMath.Resonance;

/// <content>Sequences of positive impulses designed for one mode.</content>
public sealed partial class ImpulseSequence
{
    /// <summary>Zero-vibration sequence (ZV): two impulses, half a damped period.</summary>
    /// <param name="frequency">Natural frequency of the mode, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio ζ, zero or more, less than 1.</param>
    /// <returns>The sequence.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Frequency or damping is out of range.</exception>
    public static ImpulseSequence ZeroVibration(Frequency frequency, double dampingRatio) => ZeroVibrationDerivative(frequency, dampingRatio, 0);

    /// <summary>Zero-vibration-derivative sequence (ZVD and higher): the residual's first derivatives by frequency are zero too.</summary>
    /// <param name="frequency">Natural frequency of the mode, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio ζ, zero or more, less than 1.</param>
    /// <param name="derivatives">How many derivatives vanish: 0 is ZV, 1 ZVD, 2 ZVDD; at most 10.</param>
    /// <returns>The sequence of derivatives + 2 impulses, (derivatives + 1)/2 damped periods long.</returns>
    /// <remarks>A_i ∝ C(k, i)·Kⁱ at i·T_d/2, k = derivatives + 1, K = exp(−πζ/√(1 − ζ²)).
    /// Source: N. C. Singer, W. P. Seering, 1990, J. Dyn. Syst. Meas. Control 112(1), 76-82 (from memory).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Frequency, damping or number is out of range.</exception>
    public static ImpulseSequence ZeroVibrationDerivative(Frequency frequency, double dampingRatio, int derivatives = 1)
    {
        double hertz = Guard.Positive(frequency.Hertz, nameof(frequency));
        _ = Damping(dampingRatio);
        Guard.Between(derivatives, 0, 10);
        return Scaled(SequenceDesign.ZeroVibration(dampingRatio, derivatives + 1), hertz);
    }

    /// <summary>Extra-insensitive sequence (EI) one damped period long: three impulses that leave the tolerance at the design frequency and stay near it over a wider band.</summary>
    /// <param name="frequency">Natural frequency of the mode, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio ζ, zero or more; how far the sequence exists depends on the tolerance (to 0.68 for 5 %) and stands in the exception.</param>
    /// <param name="tolerance">Tolerated residual V as a ratio, 0.005 to 0.3.</param>
    /// <returns>The sequence.</returns>
    /// <remarks>
    /// Without damping (1 + V)/4, (1 − V)/2, (1 + V)/4 at 0, T/2, T. With damping C = S = 0 at one frequency below and one above the design, residual equal to the tolerance at the design,
    /// last impulse one damped period after the first: the constraints that the published curve fits go by, solved by continuation from the undamped form. Between the zeros the residual
    /// then exceeds the tolerance slightly (5.02 % for 5 % at a damping ratio of 0.2); <see cref="MultiHumpExtraInsensitive"/> with one hump does not exceed it and is a little shorter.
    /// Source: W. Singhose, W. Seering, N. Singer, 1994, J. Mech. Design 116(2), 654-659 (from memory).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Frequency, damping or tolerance is out of range.</exception>
    public static ImpulseSequence ExtraInsensitive(Frequency frequency, double dampingRatio, double tolerance = 0.05)
    {
        double hertz = Guard.Positive(frequency.Hertz, nameof(frequency));
        _ = Damping(dampingRatio);
        Guard.Between(tolerance, 0.005, 0.3);
        return Scaled(SequenceDesign.ExtraInsensitive(dampingRatio, tolerance), hertz);
    }

    /// <summary>Extra-insensitive sequence whose residual reaches the tolerance in one to four humps between its zeros: the more humps, the wider the band and the longer the sequence.</summary>
    /// <param name="frequency">Natural frequency of the mode, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio ζ, zero or more; how far the sequence exists depends on humps and tolerance (for 5 %: 0.69, 0.44, 0.31, 0.21 for one to four humps) and stands in
    /// the exception: beyond it the constraints have no solution.</param>
    /// <param name="humps">Number of humps, 1 to 4.</param>
    /// <param name="tolerance">Tolerated residual V as a ratio, 0.005 to 0.3.</param>
    /// <returns>The sequence of humps + 2 impulses, about (humps + 1)/2 periods long.</returns>
    /// <remarks>
    /// C = S = 0 at humps + 1 frequencies, V equal to the tolerance and dV/dω = 0 at the hump between each two, the middle one of these frequencies being the design frequency. Solved by
    /// continuation from the undamped form, which is a Dolph-Chebyshev window.
    /// Source: W. Singhose, S. Porter, T. Tuttle, N. Singer, 1997, J. Dyn. Syst. Meas. Control 119(2), 320-326; C. L. Dolph, 1946, Proc. IRE 34, 335-348 (both from memory).
    /// </remarks>
    /// <example><code>ImpulseSequence sequence = ImpulseSequence.MultiHumpExtraInsensitive(Frequency.FromHertz(50), dampingRatio: 0.06, humps: 2);</code></example>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static ImpulseSequence MultiHumpExtraInsensitive(Frequency frequency, double dampingRatio, int humps, double tolerance = 0.05)
    {
        double hertz = Guard.Positive(frequency.Hertz, nameof(frequency));
        _ = Damping(dampingRatio);
        Guard.Between(humps, 1, 4);
        Guard.Between(tolerance, 0.005, 0.3);
        return Scaled(SequenceDesign.MultiHump(dampingRatio, humps, tolerance), hertz);
    }

    private static double Damping(double dampingRatio) =>
        dampingRatio is >= 0 and < 1 ? dampingRatio : throw Guard.Out(nameof(dampingRatio), dampingRatio, "at least 0 and less than 1");

    private static ImpulseSequence Scaled((double[] Amplitudes, double[] Times) design, double hertz)
    {
        for (int i = 0; i < design.Times.Length; i++)
        {
            design.Times[i] /= hertz;
        }

        return new ImpulseSequence(SequenceSum.ToOne(design.Amplitudes), design.Times);
    }
}
