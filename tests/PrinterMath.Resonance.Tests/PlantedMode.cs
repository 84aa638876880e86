using System.Numerics;

namespace PrinterMath.Resonance.Tests;

/// <summary>A mode that a simulator plants: part of a response share·ω_n²/(ω_n² − ω² + 2jζω_nω), motion over commanded motion.</summary>
internal sealed record PlantedMode(double Hertz, double Zeta, double Share = 1)
{
    /// <summary>The response of all modes at one frequency.</summary>
    internal static Complex Response(IEnumerable<PlantedMode> modes, double hertz)
    {
        Complex sum = Complex.Zero;
        foreach (PlantedMode mode in modes)
        {
            double r = hertz / mode.Hertz;
            sum += mode.Share / new Complex(1 - (r * r), 2 * mode.Zeta * r);
        }

        return sum;
    }

    /// <summary>Motion under a command held from sample to sample, by the exact state transition of each mode.</summary>
    internal static double[] Motion(IReadOnlyList<PlantedMode> modes, double[] command, double rate)
    {
        double[] motion = new double[command.Length];
        foreach (PlantedMode mode in modes)
        {
            double w = 2 * Math.PI * mode.Hertz, damped = w * Math.Sqrt(1 - (mode.Zeta * mode.Zeta)), dt = 1 / rate;
            double fade = Math.Exp(-mode.Zeta * w * dt), c = Math.Cos(damped * dt), s = Math.Sin(damped * dt) / damped, x = 0, v = 0;
            for (int n = 0; n < motion.Length; n++)
            {
                motion[n] += mode.Share * x;
                double y = x - command[n];
                (x, v) = (
                    command[n] + (fade * ((y * (c + (mode.Zeta * w * s))) + (v * s))),
                    fade * ((v * (c - (mode.Zeta * w * s))) - (y * w * w * s)));
            }
        }

        return motion;
    }
}
