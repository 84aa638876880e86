using System.Collections.ObjectModel;
using System.Numerics;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>What the tool does when the drive follows a move exactly and modes lie between drive and tool.</summary>
/// <remarks>
/// Each mode is driven through its spring and damper by the command u: deflection q of the tool from the command obeys q″ + 2ζωq′ + ω²q = −u″; the tool is at u + Σ share·q. Between changes of
/// acceleration or jerk the solution is a straight line and a decaying exponential, so nothing is integrated numerically and every moment is exact to rounding.
/// Source: state transition of the linear oscillator, for example W. T. Thomson, Theory of Vibration with Applications, chapter 4 (from memory).
/// </remarks>
/// <example><code>
/// MotionSimulation simulation = MotionSimulation.Run(move.ShapedBy(sequence), [ModeShare.Of(Frequency.FromHertz(50), 0.05)]);
/// Length ripple = simulation.Residuals[0].Amplitude;
/// </code></example>
public sealed class MotionSimulation
{
    private readonly ModeShare[] _modes;
    private readonly Complex[][] _rings;
    private readonly ReadOnlyCollection<ModeResidual> _residuals;

    private MotionSimulation(MotionProfile command, ModeShare[] modes, Complex[][] rings)
    {
        Command = command;
        _modes = modes;
        _rings = rings;
        _residuals = Array.AsReadOnly([.. modes.Select((mode, m) => new ModeResidual(mode, Math.Abs(mode.Share) * rings[m][^1].Magnitude))]);
    }

    /// <summary>The move that the drive follows.</summary>
    public MotionProfile Command { get; }

    /// <summary>What each mode still does when the command has ended, in the order of the modes.</summary>
    public IReadOnlyList<ModeResidual> Residuals => _residuals;

    /// <summary>Runs a move, from rest.</summary>
    /// <param name="command">The move.</param>
    /// <param name="modes">The modes, at least one; their shares sum to one within 1e-9.</param>
    /// <returns>The simulation.</returns>
    /// <exception cref="ArgumentException">There are no modes, or the shares do not sum to one.</exception>
    public static MotionSimulation Run(MotionProfile command, IReadOnlyList<ModeShare> modes)
    {
        Guard.NotNull(command);
        double sum = 0;
        foreach (ModeShare mode in Guard.NotNull(modes))
        {
            sum += Guard.NotNull(mode, nameof(modes)).Share;
        }

        return Math.Abs(sum - 1) <= 1e-9
            ? new MotionSimulation(command, [.. modes], [.. modes.Select(mode => Rings(command.Knots, mode))])
            : throw Guard.Refused(nameof(modes), FormattableString.Invariant($"The shares of {modes.Count} modes sum to {sum}; they must sum to one."));
    }

    /// <summary>Deflection of the tool from the command at a time, positive in the positive direction of the axis.</summary>
    /// <param name="time">Time since the start of the command.</param>
    /// <returns>The deflection.</returns>
    public Length DeflectionAt(Duration time) => Length.FromMeters(Deflection(Guard.Finite(time.Seconds, nameof(time))));

    /// <summary>Position of the tool at a time.</summary>
    /// <param name="time">Time since the start of the command.</param>
    /// <returns>The position.</returns>
    public Length ToolPositionAt(Duration time) => Command.PositionAt(time) + DeflectionAt(time);

    /// <summary>Positions of the tool at many times.</summary>
    /// <param name="times">Times in seconds since the start of the command.</param>
    /// <param name="positions">Receives as many positions in metres.</param>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    public void ToolPositions(ReadOnlySpan<double> times, Span<double> positions)
    {
        Guard.AllFinite(times);
        if (positions.Length != times.Length)
        {
            throw Guard.Refused(nameof(positions), FormattableString.Invariant($"There are {times.Length} times and room for {positions.Length} positions; there must be as many of each."));
        }

        for (int i = 0; i < times.Length; i++)
        {
            positions[i] = Command.PositionAt(Duration.FromSeconds(times[i])).Meters + Deflection(times[i]);
        }
    }

    /// <summary>Complex amplitude of a mode's free ringing just after each knot: q = q of the steady state + Re(C·exp(λs)).</summary>
    private static Complex[] Rings(ReadOnlySpan<MotionKnot> knots, ModeShare mode)
    {
        double omega = 2 * Math.PI * mode.Hertz, zeta = mode.DampingRatio;
        double damped = omega * Math.Sqrt(1 - (zeta * zeta));
        var rings = new Complex[knots.Length];
        Complex ring = 0;
        for (int k = 0; k < knots.Length; k++)
        {
            if (k > 0)
            {
                ring *= Complex.Exp(new Complex(-zeta * omega, damped) * (knots[k].Time - knots[k - 1].Time));
            }

            // The deflection does not jump but the steady state does, by −Δa/ω² + 2ζΔj/ω³ and in its rate by −Δj/ω²; a step of speed is a step of the deflection's rate.
            double place = (knots[k].AccelerationChange - (2 * zeta * knots[k].JerkChange / omega)) / (omega * omega);
            double rate = (knots[k].JerkChange / (omega * omega)) - knots[k].SpeedChange;
            rings[k] = ring += new Complex(place, -(rate + (zeta * omega * place)) / damped);
        }

        return rings;
    }

    private double Deflection(double seconds)
    {
        int k = Command.KnotBefore(seconds);
        if (k < 0)
        {
            return 0;
        }

        MotionKnot knot = Command.Knots[k];
        double s = seconds - knot.Time, sum = 0;
        for (int m = 0; m < _modes.Length; m++)
        {
            double omega = 2 * Math.PI * _modes[m].Hertz, zeta = _modes[m].DampingRatio;
            double damped = omega * Math.Sqrt(1 - (zeta * zeta));
            double steady = (-(knot.Acceleration + (knot.Jerk * s)) + (2 * zeta * knot.Jerk / omega)) / (omega * omega);
            Complex ring = _rings[m][k];
            (double sine, double cosine) = Math.SinCos(damped * s);
            sum += _modes[m].Share * (steady + (Math.Exp(-zeta * omega * s) * ((ring.Real * cosine) - (ring.Imaginary * sine))));
        }

        return sum;
    }
}
