using System.Globalization;
using MathNet.Numerics.Distributions;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>How often, and how far, one entry missed the truth over many machines.</summary>
internal sealed class EntryScore
{
    private double _squares;
    private double _widths;
    private ulong _farthestSeed;

    internal int Count { get; private set; }

    internal int Misses { get; private set; }

    /// <summary>Largest distance from the truth in standard uncertainties, on the scale of the normal distribution.</summary>
    internal double Farthest { get; private set; }

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Misses} of {Count} missed, farthest {Farthest:0.00} u (seed {_farthestSeed}), rms error {Math.Sqrt(_squares / Count):G3}, mean u {_widths / Count:G3}");

    internal void Add(RecordEntry entry, double truth, ulong seed)
    {
        double error = entry.Value - truth;
        Count++;
        Misses += truth >= entry.Lower && truth <= entry.Upper ? 0 : 1;
        _squares += error * error;
        _widths += entry.StandardUncertainty;
        double distance = OnNormalScale(Math.Abs(error) / entry.StandardUncertainty, entry.DegreesOfFreedom);
        if (distance > Farthest)
        {
            Farthest = distance;
            _farthestSeed = seed;
        }
    }

    /// <summary>The normal deviate that is as improbable as this deviate of Student's t.</summary>
    private static double OnNormalScale(double deviate, double? degreesOfFreedom) =>
        degreesOfFreedom is { } v ? -Normal.InvCDF(0, 1, Math.Max(1e-15, StudentT.CDF(0, 1, v, -deviate))) : deviate;
}
