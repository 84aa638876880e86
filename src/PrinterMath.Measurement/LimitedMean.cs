namespace PrinterMath.Measurement;

/// <summary>Readings brought to within k spreads of a centre, for the searches that shift both.</summary>
internal sealed class LimitedMean
{
    /// <summary>
    /// From here up the half of the readings nearest the median always counts in full, so that each search contracts and no spread collapses.
    /// </summary>
    private const double LeastTuning = 1.2;

    private readonly double[] _readings;

    internal LimitedMean(ReadOnlySpan<double> readings, RobustLocationOptions options, double tuningConstant)
    {
        Guard.AtLeast(readings.Length, 3, nameof(readings));
        TuningConstant = Guard.Between(options.TuningConstant ?? tuningConstant, LeastTuning, 10, nameof(options.TuningConstant));
        MaximumIterations = Guard.AtLeast(options.MaximumIterations, 1, nameof(options.MaximumIterations));
        Tolerance = Guard.Between(options.Tolerance, 1e-14, 0.1, nameof(options.Tolerance));
        Origin = Median.Of(readings);
        _readings = new double[readings.Length];
        double largest = 0;
        for (int i = 0; i < _readings.Length; i++)
        {
            _readings[i] = readings[i] - Origin;
            largest = Math.Max(largest, Math.Abs(_readings[i]));
        }

        if (largest > double.MaxValue / 1e10)
        {
            throw Guard.Out(nameof(readings), largest, "spread over less than 1e298");
        }

        Spread = MedianAbsoluteDeviation.Of(_readings);
    }

    internal double TuningConstant { get; }

    internal int MaximumIterations { get; }

    internal double Tolerance { get; }

    /// <summary>Scaled median absolute deviation.</summary>
    internal double Spread { get; }

    internal bool HasSpread => Spread > 0;

    /// <summary>The median. The search works on deviations from it, so it starts from zero.</summary>
    private double Origin { get; }

    internal double Mean(double center, double spread)
    {
        double sum = 0;
        foreach (double reading in _readings)
        {
            sum += Limited(reading, center, spread) - center;
        }

        return center + (sum / _readings.Length);
    }

    /// <summary>√(Σ(limited − about)²/(n − 1)).</summary>
    internal double StandardDeviation(double center, double spread, double about)
    {
        double sum = 0;
        foreach (double reading in _readings)
        {
            double ratio = (Limited(reading, center, spread) - about) / spread;
            sum += ratio * ratio;
        }

        return spread * Math.Sqrt(sum / (_readings.Length - 1));
    }

    /// <summary>Part of the readings that count in full.</summary>
    internal double FullShare(double center, double spread) => 1 - ((double)Outside(center, spread).Length / _readings.Length);

    internal RobustLocation Result(double center, double spread, double standardUncertainty, int steps, double change)
    {
        List<Finding> findings = [];
        int[] outside = Outside(center, spread);
        if (outside.Length > 0)
        {
            findings.Add(RobustFindings.SetAside(outside.Length, TuningConstant));
        }

        if (change > Tolerance)
        {
            findings.Add(RobustFindings.NotConverged(steps, change));
        }

        return new RobustLocation((Origin + center, spread, standardUncertainty), outside, steps, findings);
    }

    internal RobustLocation WithoutSpread() =>
        new(null, [], 0, [RobustFindings.NoSpread(_readings.Count(d => d == 0), _readings.Length)]);

    private double Limited(double reading, double center, double spread) =>
        Math.Clamp(reading, center - (TuningConstant * spread), center + (TuningConstant * spread));

    private int[] Outside(double center, double spread) =>
        [.. Enumerable.Range(0, _readings.Length).Where(i => Math.Abs(_readings[i] - center) > TuningConstant * spread)];
}
