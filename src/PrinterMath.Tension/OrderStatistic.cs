namespace PrinterMath.Tension;

/// <summary>The k-th smallest of some numbers without sorting them all.</summary>
/// <remarks>Source: Hoare 1961, Algorithm 65: find, Communications of the ACM 4 (from memory).</remarks>
internal static class OrderStatistic
{
    /// <summary>The value that would stand at <paramref name="k"/> were the span sorted; the span is reordered.</summary>
    internal static double Select(Span<double> values, int k)
    {
        int left = 0, right = values.Length - 1;
        while (left < right)
        {
            double pivot = values[k];
            int i = left, j = right;
            while (i <= j)
            {
                while (values[i] < pivot)
                {
                    i++;
                }

                while (pivot < values[j])
                {
                    j--;
                }

                if (i <= j)
                {
                    (values[i], values[j]) = (values[j], values[i]);
                    i++;
                    j--;
                }
            }

            left = j < k ? i : left;
            right = k < i ? j : right;
        }

        return values[k];
    }
}
