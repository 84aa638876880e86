using BenchmarkDotNet.Attributes;
using PrinterMath.Measurement;
using PrinterMath.Resonance;
using UnitsNet;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class RecordToRecommendation
{
    private double[] _t = [], _x = [], _y = [], _z = [];

    [Params(10, 60)]
    public int Seconds { get; set; }

    [GlobalSetup]
    public void Prepare()
    {
        _t = [.. Enumerable.Range(0, (int)(Seconds * Inputs.VibrationRate)).Select(n => n / Inputs.VibrationRate)];
        (_x, _y, _z) = (Inputs.Vibration(_t.Length), Inputs.Vibration(_t.Length, 2), Inputs.Vibration(_t.Length, 3));
    }

    [Benchmark(Baseline = true)]
    public double Whole() => Recommend(_t, _x, _y, _z);

    /// <summary>Repair, three spectra, the modes of one decay of 0.9 s, the sequence, the acceleration it allows in m/s².</summary>
    internal static double Recommend(double[] t, double[] x, double[] y, double[] z)
    {
        AccelerationRecord record = AccelerationRecord.FromSamples(t, x, y, z);
        double powerX = Welch.Estimate(record.X).TotalPower;
        double powerY = Welch.Estimate(record.Y).TotalPower;
        double powerZ = Welch.Estimate(record.Z).TotalPower;
        SampledSignal strongest = powerX >= powerY && powerX >= powerZ ? record.X : powerY >= powerZ ? record.Y : record.Z;
        SampledSignal decay = SampledSignal.FromSamples(strongest.Samples[..(int)(0.9 * Inputs.VibrationRate)], strongest.SampleRate);
        SequenceChoice choice = SequenceSearch.For(RingDown.Fit(decay).Modes, new SequenceLimits { AcceptableResidual = 0.05 });
        return AllowedAcceleration.ForDeviation(choice.Pick.Sequence, Length.FromMicrometers(50)).MetersPerSecondSquared;
    }
}
