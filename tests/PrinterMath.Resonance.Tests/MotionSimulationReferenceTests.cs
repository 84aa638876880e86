using UnitsNet;

namespace PrinterMath.Resonance.Tests;

[Trait("Evidence", "Published")]
public sealed class MotionSimulationReferenceTests
{
    private static readonly ModeShare Fifty = ModeShare.Of(Frequency.FromHertz(50), 0);

    // Undamped response to pulses (Thomson, Theory of Vibration with Applications, chapter 4, from memory): a pulse of acceleration a and length τ leaves 2a/ω²·|sin(ωτ/2)|. With a = 3000 mm/s²,
    // 50 Hz, τ = 1/30 s: 0.052648 mm, evaluated with NumPy, six digits.
    [Fact]
    public void A_pulse_of_acceleration()
    {
        MotionProfile pulse = MotionProfile.FromSegments([MotionSegment.Of(Duration.FromSeconds(1.0 / 30), Acceleration.FromMillimetersPerSecondSquared(3000))]);
        Assert.Equal(0.052648, MotionSimulation.Run(pulse, [Fifty]).Residuals[0].Amplitude.Millimeters, 5.1e-7);
        MotionProfile period = MotionProfile.FromSegments([MotionSegment.Of(Duration.FromSeconds(0.04), Acceleration.FromMillimetersPerSecondSquared(3000))]);
        Assert.Equal(0, MotionSimulation.Run(period, [Fifty]).Residuals[0].Amplitude.Millimeters, 1e-15);
    }

    // A step of speed v leaves v/ω: 0.318310 mm for 100 mm/s.
    [Fact]
    public void A_step_of_speed()
    {
        MotionProfile step = MotionProfile.FromSegments([MotionSegment.Of(Duration.Zero, Acceleration.Zero, default, Speed.FromMillimetersPerSecond(100))]);
        Assert.Equal(0.318310, MotionSimulation.Run(step, [Fifty]).Residuals[0].Amplitude.Millimeters, 5.1e-7);
    }

    // A trapezoid of pulses τ and steady speed t_c leaves that of one pulse times 2|sin(ω(τ + t_c)/2)|.
    [Theory]
    [InlineData(10.3)]
    [InlineData(17.9)]
    public void A_trapezoid(double millimeters)
    {
        double tau = 1.0 / 30, a = 3, v = a * tau, cruise = (millimeters * 1e-3 / v) - tau, omega = 100 * Math.PI;
        MotionProfile move = MotionProfile.Trapezoid(Length.FromMillimeters(millimeters), Speed.FromMetersPerSecond(v), Acceleration.FromMetersPerSecondSquared(a));
        double expected = 2 * a / (omega * omega) * Math.Abs(Math.Sin(omega * tau / 2)) * 2 * Math.Abs(Math.Sin(omega * (tau + cruise) / 2));
        Assert.Equal(expected, MotionSimulation.Run(move, [Fifty]).Residuals[0].Amplitude.Meters, 1e-15);
    }

    // Ripple on a wall, λ = v/f_d and ratio exp(−2πζ/√(1 − ζ²)), evaluated with NumPy: 100 mm/s past a damped frequency of 50 Hz 2.000 mm, at ζ = 0.05 the ratio 0.730115; 200 mm/s past 40 Hz
    // 5.000 mm, at ζ = 0.1 the ratio 0.531802. Six digits.
    [Theory]
    [InlineData(50, 0.05, 100, 2.000, 0.730115)]
    [InlineData(40, 0.1, 200, 5.000, 0.531802)]
    public void Ripple_on_a_wall(double dampedHertz, double zeta, double speed, double wavelength, double ratio)
    {
        ModeShare mode = ModeShare.Of(Frequency.FromHertz(dampedHertz / Math.Sqrt(1 - (zeta * zeta))), zeta);
        MotionProfile step = MotionProfile.FromSegments([MotionSegment.Of(Duration.Zero, Acceleration.Zero, default, Speed.FromMillimetersPerSecond(speed))]);
        ModeResidual residual = MotionSimulation.Run(step, [mode]).Residuals[0];
        Assert.Equal(wavelength, residual.Wavelength(Speed.FromMillimetersPerSecond(speed)).Millimeters, 1e-12);
        Assert.Equal(ratio, residual.RatioOfSuccessiveRipples, 5.1e-7);
    }
}
