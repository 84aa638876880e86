using UnitsNet;

namespace PrinterMath.Resonance;

/// <content>What a sequence costs in time: its moments.</content>
public sealed partial class ImpulseSequence
{
    /// <summary>Time from the first to the last impulse: what every move takes longer.</summary>
    public Duration Duration => Duration.FromSeconds(DurationSeconds);

    /// <summary>Mean delay m₁ = ΣA·t: how far the shaped motion lags at constant speed.</summary>
    public Duration MeanDelay => Duration.FromSeconds(MeanDelaySeconds);

    /// <summary>Variance ΣA·(t − m₁)² in s²: what rounds the path under acceleration. Adds up under <see cref="Convolve"/>.</summary>
    public double VarianceSquareSeconds
    {
        get
        {
            double mean = MeanDelaySeconds;
            double sum = 0;
            for (int i = 0; i < _times.Length; i++)
            {
                sum += _amplitudes[i] * (_times[i] - mean) * (_times[i] - mean);
            }

            return sum;
        }
    }

    /// <summary>Mean absolute deviation ΣA·|t − m₁|: what cuts a corner at constant speed.</summary>
    public Duration MeanAbsoluteDeviation
    {
        get
        {
            double mean = MeanDelaySeconds;
            double sum = 0;
            for (int i = 0; i < _times.Length; i++)
            {
                sum += _amplitudes[i] * Math.Abs(_times[i] - mean);
            }

            return Duration.FromSeconds(sum);
        }
    }

    internal double DurationSeconds => _times[^1];

    private double MeanDelaySeconds
    {
        get
        {
            double sum = 0;
            for (int i = 0; i < _times.Length; i++)
            {
                sum += _amplitudes[i] * _times[i];
            }

            return sum;
        }
    }
}
