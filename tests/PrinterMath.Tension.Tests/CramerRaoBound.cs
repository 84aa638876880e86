using MathNet.Numerics.LinearAlgebra;

namespace PrinterMath.Tension.Tests;

/// <summary>Least standard deviation of the first partial's frequency, as a ratio, that any unbiased estimator can have in white noise.</summary>
/// <remarks>
/// Fisher matrix JᵀJ/σ² of the samples after the onset by central differences of the simulator's own signal; unknown are the first partial, the
/// inharmonicity, and each partial's amplitude, phase and decay. The glide is known to be none.
/// </remarks>
internal static class CramerRaoBound
{
    private const double Step = 1e-5;

    internal static double Of(SimulatedSpan span)
    {
        double rate = span.Signal.SampleRateHertz;
        int from = (int)(span.Start * rate), count = span.Signal.Samples.Length - from;
        double start = span.Start - (from / rate);
        double[] first = new double[count], stiffness = new double[count];
        List<double[]> columns = [first, stiffness];
        foreach (SimulatedVoice v in span.Voices)
        {
            columns.Add(Slope(v with { Amplitude = v.Amplitude * (1 + Step) }, v with { Amplitude = v.Amplitude * (1 - Step) }));
            columns.Add(Slope(v with { Phase = v.Phase + Step }, v with { Phase = v.Phase - Step }));
            columns.Add(Slope(v with { Decay = v.Decay * (1 + Step) }, v with { Decay = v.Decay * (1 - Step) }));
            double[] relative = Slope(v with { Frequency = v.Frequency * (1 + (0.1 * Step)) }, v with { Frequency = v.Frequency * (1 - (0.1 * Step)) });
            double n2 = (double)v.Number * v.Number, b = span.Inharmonicity;
            double ofStiffness = ((n2 / (1 + (b * n2))) - (1 / (1 + b))) / 2;
            for (int i = 0; i < count; i++)
            {
                first[i] += 10 * relative[i];
                stiffness[i] += 10 * relative[i] * ofStiffness * 1e-3;
            }
        }

        Matrix<double> jacobian = Matrix<double>.Build.DenseOfColumnArrays(columns);
        Matrix<double> fisher = jacobian.TransposeThisAndMultiply(jacobian);
        return span.WhiteDeviation * Math.Sqrt(fisher.Inverse()[0, 0]);

        double[] Slope(SimulatedVoice above, SimulatedVoice below)
        {
            double[] up = new double[count], down = new double[count];
            above.Ring(up, rate, start, 1, 1, 0, 1);
            below.Ring(down, rate, start, 1, 1, 0, 1);
            for (int i = 0; i < count; i++)
            {
                up[i] = (up[i] - down[i]) / (2 * Step);
            }

            return up;
        }
    }
}
