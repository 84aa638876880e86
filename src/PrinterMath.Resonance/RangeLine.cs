using System.Numerics;

namespace PrinterMath.Resonance;

/// <summary>The frequencies of a range at one damping ratio; angular frequencies in radians per unit of time.</summary>
internal readonly record struct RangeLine(double LowerOmega, double UpperOmega, double Damping)
{
    private const int Dampings = 4;

    private double Root => Math.Sqrt(1 - (Damping * Damping));

    /// <summary>Lines at five damping ratios across each range, or one where it has a single damping ratio.</summary>
    internal static RangeLine[] Of(IEnumerable<ModeRange> ranges, double unit)
    {
        List<RangeLine> lines = [];
        foreach (ModeRange range in ranges)
        {
            int steps = range.HighestDampingRatio > range.LowestDampingRatio ? Dampings : 0;
            for (int d = 0; d <= steps; d++)
            {
                double zeta = range.LowestDampingRatio + (steps == 0 ? 0 : (range.HighestDampingRatio - range.LowestDampingRatio) * d / steps);
                lines.Add(new RangeLine(2 * Math.PI * range.Band.LowerHertz * unit, 2 * Math.PI * range.Band.UpperHertz * unit, zeta));
            }
        }

        return [.. lines];
    }

    /// <summary>What an impulse of size one at a time does to a mode, seen at the end of the sequence.</summary>
    internal Complex Term(double omega, double time, double end) =>
        Complex.FromPolarCoordinates(Math.Exp(Damping * omega * (time - end)), omega * Root * time);

    /// <summary>Derivative of the term's exponent by time.</summary>
    internal Complex RateByTime(double omega) => new(Damping * omega, omega * Root);

    /// <summary>Derivative of the term's exponent by angular frequency.</summary>
    internal Complex RateByOmega(double time, double end) => new(Damping * (time - end), Root * time);

    /// <summary>The residual of a sequence, a complex number of size V.</summary>
    internal Complex Residual(double omega, ReadOnlySpan<double> amplitudes, ReadOnlySpan<double> times, double end)
    {
        Complex sum = 0;
        for (int i = 0; i < times.Length; i++)
        {
            sum += amplitudes[i] * Term(omega, times[i], end);
        }

        return sum;
    }
}
