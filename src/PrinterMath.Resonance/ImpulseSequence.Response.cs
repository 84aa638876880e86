using UnitsNet;

namespace PrinterMath.Resonance;

/// <content>What a sequence does to a command that is itself a vibration, and to a clock.</content>
public sealed partial class ImpulseSequence
{
    /// <summary>Gain |ΣA·exp(−iωt)|: amplitude of a steady sinusoidal command after shaping, over that before.</summary>
    /// <param name="frequency">Frequency of the command, zero or more.</param>
    /// <returns>The ratio; 1 at zero, and never more than one for positive impulses.</returns>
    /// <remarks>Not to be confused with <see cref="ResidualVibration"/>, which is about what a mode does when the command is over.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is negative.</exception>
    public double Gain(Frequency frequency) => Response(frequency).Magnitude;

    /// <summary>Phase of a steady sinusoidal command after shaping, less that before; negative is a lag. Near zero it is −2πf·m₁.</summary>
    /// <param name="frequency">Frequency of the command, zero or more.</param>
    /// <returns>The angle, greater than −180° and at most 180°.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is negative.</exception>
    public Angle Phase(Frequency frequency) => Angle.FromRadians(Response(frequency).Phase);

    /// <summary>This sequence on a machine that can only place impulses at multiples of a time step.</summary>
    /// <param name="step">The time step, greater than zero.</param>
    /// <returns>Each impulse split between the steps before and after it so that its mean delay stays; an impulse at a step stays whole.</returns>
    /// <remarks>What it costs shows in <see cref="ResidualVibration"/> of the result: about (ω·step)²/8 for a split impulse at worst (derived), and in a variance that is larger by up to step²/4.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The step is not positive.</exception>
    public ImpulseSequence RoundedTo(Duration step)
    {
        double seconds = Guard.Positive(step.Seconds, nameof(step));
        SortedDictionary<double, double> placed = [];
        for (int i = 0; i < Count; i++)
        {
            double steps = _times[i] / seconds;
            double before = Math.Round(steps);
            double share = Math.Abs(steps - before) <= 1e-9 * Math.Max(1, steps) ? 0 : steps - (before = Math.Floor(steps));
            placed[before] = placed.GetValueOrDefault(before) + (_amplitudes[i] * (1 - share));
            if (share > 0)
            {
                placed[before + 1] = placed.GetValueOrDefault(before + 1) + (_amplitudes[i] * share);
            }
        }

        return new ImpulseSequence(SequenceSum.ToOne([.. placed.Values]), [.. placed.Keys.Select(steps => steps * seconds)]);
    }

    private System.Numerics.Complex Response(Frequency frequency)
    {
        double omega = 2 * Math.PI * Guard.NonNegative(frequency.Hertz, nameof(frequency));
        System.Numerics.Complex sum = 0;
        for (int i = 0; i < Count; i++)
        {
            sum += System.Numerics.Complex.FromPolarCoordinates(_amplitudes[i], -omega * _times[i]);
        }

        return sum;
    }
}
