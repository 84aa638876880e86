using System.Numerics;
using System.Runtime.InteropServices;

namespace PrinterMath.Tramming;

/// <summary>Where the lowest and the highest of many values stand, the first of equals; values are fed in blocks, of which only one that betters the extremes is searched.</summary>
internal struct LowestHighest(double lowest, double highest)
{
    internal const int Block = 128;

    internal double Lowest = lowest;
    internal double Highest = highest;
    internal int LowestAt;
    internal int HighestAt;

    internal static LowestHighest Nothing => new(double.MaxValue, double.MinValue);

    internal void Take(scoped ReadOnlySpan<double> block, int first)
    {
        ReadOnlySpan<Vector<double>> vectors = MemoryMarshal.Cast<double, Vector<double>>(block);
        bool better = false;
        if (vectors.Length > 0)
        {
            Vector<double> low = vectors[0], high = low;
            foreach (Vector<double> vector in vectors[1..])
            {
                low = Vector.Min(low, vector);
                high = Vector.Max(high, vector);
            }

            better = Vector.LessThanAny(low, new Vector<double>(Lowest)) || Vector.GreaterThanAny(high, new Vector<double>(Highest));
        }

        for (int i = better ? 0 : vectors.Length * Vector<double>.Count; i < block.Length; i++)
        {
            (Lowest, LowestAt) = block[i] < Lowest ? (block[i], first + i) : (Lowest, LowestAt);
            (Highest, HighestAt) = block[i] > Highest ? (block[i], first + i) : (Highest, HighestAt);
        }
    }
}
