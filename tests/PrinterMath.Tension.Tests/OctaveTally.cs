using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>Wrong octaves, refusals, errors and intervals over the seeds of one hardship.</summary>
internal sealed class OctaveTally(Hardship hardship, int cases)
{
    private double _squares;
    private double _widths;

    internal Hardship Hardship { get; } = hardship;

    internal List<string> Wrong { get; } = [];

    internal int Refused { get; private set; }

    internal int Inside { get; private set; }

    internal int Answered => cases - Refused;

    internal static OctaveTally Of(Hardship hardship, int firstSeed, int cases)
    {
        OctaveTally tally = new(hardship, cases);
        for (int seed = firstSeed; seed < firstSeed + cases; seed++)
        {
            SimulatedSpan span = SimulatedSpan.Make(hardship, seed);
            if (Pluck.Read(span.Signal).TryGetFundamental(out Measured<Frequency> heard))
            {
                tally.Add(seed, heard, span.FirstPartial);
            }
            else
            {
                tally.Refused++;
            }
        }

        return tally;
    }

    private void Add(int seed, Measured<Frequency> heard, double truth)
    {
        double error = (heard.SiValue / truth) - 1;
        Inside += heard.Interval(0.95).Contains(Frequency.FromHertz(truth)) ? 1 : 0;
        _squares += Math.Abs(error) > 0.03 ? 0 : error * error;
        _widths += heard.SiStandardUncertainty / heard.SiValue;
        if (Math.Abs(error) > 0.03)
        {
            Wrong.Add($"seed {seed}: {heard} for {truth:F2} Hz");
        }
    }

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Hardship}: wrong {Wrong.Count}, refused {Refused} of {cases}, inside {Inside}, relative RMSE {Math.Sqrt(_squares / Math.Max(1, Answered)):G2}, mean u {_widths / Math.Max(1, Answered):G2}");
}
