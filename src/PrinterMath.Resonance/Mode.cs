using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>A vibration mode: natural frequency, damping ratio and amplitude, with their joint uncertainty.</summary>
/// <remarks>Natural is the undamped frequency f_n; the mode rings at the damped frequency f_n·√(1 − ζ²).</remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Mode
{
    internal Mode(JointEstimate joint) => Joint = joint;

    /// <summary>Natural frequency f_n.</summary>
    public Measured<Frequency> Frequency => Joint.Estimate<Frequency>(0);

    /// <summary>Damping ratio ζ.</summary>
    public Measured<double> DampingRatio => Joint.Estimate<double>(1);

    /// <summary>Amplitude: of the decay at its start in the unit of the signal, or the mode's root mean square when found in a spectrum.</summary>
    public Measured<double> Amplitude => Joint.Estimate<double>(2);

    /// <summary>Frequency at which the mode rings, f_n·√(1 − ζ²), with its uncertainty.</summary>
    public Measured<Frequency> DampedFrequency =>
        Propagation.FirstOrder<Frequency>(x => x[0] * Math.Sqrt(1 - (x[1] * x[1])), Joint.Inputs, Joint.Correlations).Result;

    /// <summary>Natural frequency (Hz), damping ratio and amplitude together, in this order, with their covariance.</summary>
    public JointEstimate Joint { get; }

    internal double Hertz => Frequency.SiValue;

    /// <summary>A mode known from elsewhere, for example from another measurement.</summary>
    /// <param name="frequency">Natural frequency, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio, greater than 0 and less than 1.</param>
    /// <param name="amplitude">Amplitude in the unit of the signal, zero or more.</param>
    /// <returns>The mode, the three taken as uncorrelated.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    /// <exception cref="InvalidOperationException">A value was never measured.</exception>
    public static Mode FromValues(Measured<Frequency> frequency, Measured<double> dampingRatio, Measured<double> amplitude)
    {
        double[] values =
        [
            Guard.Positive(frequency.SiValue, nameof(frequency)),
            Guard.StrictlyBetween(dampingRatio.SiValue, 0, 1, nameof(dampingRatio)),
            Guard.NonNegative(amplitude.SiValue, nameof(amplitude)),
        ];
        double[] covariance = new double[9];
        covariance[0] = Math.Pow(frequency.SiStandardUncertainty, 2);
        covariance[4] = Math.Pow(dampingRatio.SiStandardUncertainty, 2);
        covariance[8] = Math.Pow(amplitude.SiStandardUncertainty, 2);
        double freedom = Math.Min(frequency.DegreesOfFreedom, Math.Min(dampingRatio.DegreesOfFreedom, amplitude.DegreesOfFreedom));
        return From(values, covariance, freedom);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Frequency, damping ratio in per cent, amplitude.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Frequency}, ζ = {DampingRatio.ToString("S %", CultureInfo.InvariantCulture)}, amplitude {Amplitude}");

    internal static Mode From(double[] values, double[] covariance, double freedom) =>
        new(JointEstimate.FromSi(["natural frequency", "damping ratio", "amplitude"], ["Hz", "1", "1"], values, covariance, freedom));
}
