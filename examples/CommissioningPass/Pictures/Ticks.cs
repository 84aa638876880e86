namespace CommissioningPass.Pictures;

/// <summary>Round places along a scale.</summary>
internal static class Ticks
{
    /// <summary>Multiples of 1, 2 or 5 times a power of ten, no more than asked for.</summary>
    internal static IReadOnlyList<double> Between(double low, double high, int most)
    {
        double step = Step(high - low, most);
        double first = Math.Ceiling((low / step) - 1e-9);
        return [.. Enumerable.Range(0, most + 1).Select(i => (first + i) * step).Where(tick => tick <= high + (step * 1e-9))];
    }

    /// <summary>As many decimals as the ticks need.</summary>
    internal static string Write(double tick, IReadOnlyList<double> all)
    {
        double step = all.Count > 1 ? all[1] - all[0] : Math.Max(Math.Abs(tick), 1);
        int decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 9);
        string text = tick.ToString("F" + decimals);
        return text.StartsWith('-') ? text.Trim('-', '0', '.').Length == 0 ? text[1..] : "−" + text[1..] : text;
    }

    private static double Step(double span, int most)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(span / most)));
        double[] steps = [power, 2 * power, 5 * power, 10 * power];
        return steps.First(step => span / step <= most + 1e-9);
    }
}
