namespace PrinterMath.Tension.Tests;

/// <summary>One partial as it was planted: frequency in Hz, amplitude at the onset, time to 1/e in s, and phase at the first sample after the onset in rad.</summary>
public readonly record struct SimulatedVoice(int Number, double Frequency, double Amplitude, double Decay, double Phase)
{
    /// <summary>Time integral of the square.</summary>
    public double Energy => Amplitude * Amplitude * Decay / 4;

    /// <summary>What it adds to the mean square over the first seconds; a voice above 2000 Hz does not count.</summary>
    public double MeanPower(double seconds) => Frequency > 2000 ? 0 : Energy * (1 - Math.Exp(-2 * seconds / Decay)) / seconds;

    /// <summary>
    /// Adds the voice to a recording. Pitch is a factor on the frequency; the glide is its relative rise at the onset, which falls with the
    /// square of the amplitude of the first partial.
    /// </summary>
    public void Ring(double[] x, double rate, double start, double pitch, double loudness, double glide, double glideDecay)
    {
        double phase = Phase;
        for (int i = (int)Math.Ceiling(start * rate); i < x.Length; i++)
        {
            double t = (i / rate) - start;
            double level = Math.Exp(-t / Decay);
            if (level < 1e-5)
            {
                break;
            }

            x[i] += loudness * Amplitude * level * Math.Min(1, t / 0.002) * Math.Sin(phase);
            phase += 2 * Math.PI * pitch * Frequency * (1 + (glide * Math.Exp(-2 * t / glideDecay))) / rate;
        }
    }
}
