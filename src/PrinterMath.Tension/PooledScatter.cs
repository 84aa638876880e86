using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Variance of a single reading within places, s² = ΣΣ(x − x̄)²/Σ(n − 1), for places that were read once from a side.</summary>
/// <remarks>Source: JCGM 100:2008, 4.2.4 (pooled estimate of variance; clause number from memory).</remarks>
internal readonly record struct PooledScatter(double Variance, int DegreesOfFreedom)
{
    internal static PooledScatter Of(IReadOnlyList<ReversalReadings> readings)
    {
        double squares = 0;
        int freedom = 0;
        foreach (ReversalReadings place in readings)
        {
            foreach (IReadOnlyList<double> side in new[] { Guard.NotNull(place, nameof(readings)).FromBelow, place.FromAbove })
            {
                squares += Squares(side);
                freedom += side.Count - 1;
            }
        }

        return new PooledScatter(freedom > 0 ? squares / freedom : 0, freedom);
    }

    /// <summary>Mean of readings from one side with its own scatter, or the pooled one where there is a single reading, and the reading step.</summary>
    internal Measured<Length> Mean(IReadOnlyList<double> readings, double step)
    {
        int n = readings.Count;
        int freedom = n > 1 ? n - 1 : DegreesOfFreedom;
        double square = (n > 1 ? Squares(readings) / (n - 1) : Variance) / n;

        // Welch-Satterthwaite with the resolution taken as known.
        double total = square + (step * step / 12);
        double degreesOfFreedom = square > 0 ? Math.Max(1, freedom * total * total / (square * square)) : double.PositiveInfinity;
        return Measured<Length>.FromSi(readings.Average(), Math.Sqrt(total), degreesOfFreedom);
    }

    private static double Squares(IReadOnlyList<double> readings)
    {
        double mean = readings.Average();
        return readings.Sum(reading => (reading - mean) * (reading - mean));
    }
}
