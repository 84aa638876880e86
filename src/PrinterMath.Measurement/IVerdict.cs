namespace PrinterMath.Measurement;

/// <summary>A verdict on any quantity: for lists that hold many kinds.</summary>
public interface IVerdict
{
    /// <summary>Within, outside, or undecided.</summary>
    Conclusion Conclusion { get; }

    /// <summary>Probability that the true value lies within the limits, a ratio.</summary>
    double ProbabilityOfConformity { get; }

    /// <summary>Largest accepted probability that a Within or an Outside is wrong, a ratio.</summary>
    double SpecificRisk { get; }

    /// <summary>When undecided, what stands in the way; else null.</summary>
    Limitation? Limitation { get; }
}
