using System.Numerics;

namespace PrinterMath.Measurement;

/// <summary>Where the inputs of a transform of a power of two go: place j takes input reverse(j), the bits of j in reverse order.</summary>
internal static class FourierOrder
{
    internal static int[] Reversed(int count)
    {
        int[] order = new int[count];
        int bits = BitOperations.Log2((uint)count);
        for (int j = 1; j < count; j++)
        {
            order[j] = (order[j >> 1] >> 1) | ((j & 1) << (bits - 1));
        }

        return order;
    }
}
