namespace PrinterMath.Measurement;

/// <summary>
/// Thrown by the value property of a result whose data hold no answer. The result's <c>TryGet...</c> method says the same without throwing.
/// </summary>
/// <remarks>Not to be confused with <see cref="ArgumentException"/>, which is the caller's mistake.</remarks>
public sealed class IndeterminateException : InvalidOperationException
{
    /// <summary>An exception without a finding.</summary>
    public IndeterminateException()
        : this("The data hold no answer.")
    {
    }

    /// <summary>An exception with a sentence but no finding.</summary>
    /// <param name="message">The sentence.</param>
    public IndeterminateException(string message)
        : base(message)
    {
    }

    /// <summary>An exception with a sentence and a cause.</summary>
    /// <param name="message">The sentence.</param>
    /// <param name="innerException">The cause.</param>
    public IndeterminateException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>An exception that carries the blocking finding.</summary>
    /// <param name="finding">What the data lack.</param>
    public IndeterminateException(Finding finding)
        : base(Guard.NotNull(finding).ToString()) =>
        Finding = finding;

    /// <summary>What the data lack; null when raised with a bare sentence.</summary>
    public Finding? Finding { get; }
}
