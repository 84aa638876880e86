namespace PrinterMath.Extrusion;

/// <summary>How a fit series is run and when it stops.</summary>
public sealed record FitSeriesOptions
{
    /// <summary>Smallest step in which the machine's flow can be set, a ratio; the next flow is always a multiple of it.</summary>
    /// <value>0.005. Greater than zero and at most half the bracket.</value>
    public double FlowStep { get; init; } = 0.005;

    /// <summary>The series stops when half the width of the 95 % interval of the 50 % flow is at most this, a ratio.</summary>
    /// <value>0.005. Greater than zero.</value>
    public double WantedHalfWidth { get; init; } = 0.005;

    /// <summary>The series stops after this many trials.</summary>
    /// <value>14. At least 2.</value>
    public int MaximumTrials { get; init; } = 14;
}
