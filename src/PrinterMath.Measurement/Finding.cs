using System.Collections.ObjectModel;
using System.Diagnostics;

namespace PrinterMath.Measurement;

/// <summary>
/// Something an analysis noticed about its data: a stable code, how much it weighs, the numbers, and a sentence in English.
/// </summary>
/// <remarks>
/// A host words and translates by <see cref="Code"/> and <see cref="Numbers"/>; the sentence may change between versions, the code may not.
/// Equality is by code, severity and numbers.
/// </remarks>
/// <example><code>
/// foreach (Finding finding in reading.Findings) { Console.WriteLine($"{finding.Code}: {finding.Message}"); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Finding : IEquatable<Finding>
{
    private readonly ReadOnlyCollection<FindingNumber> _numbers;

    /// <summary>A finding.</summary>
    /// <param name="code">Stable dotted code, for example <c>pluck.none</c>.</param>
    /// <param name="severity">How much it weighs.</param>
    /// <param name="message">One sentence in the trade's words, with the numbers.</param>
    /// <param name="numbers">The numbers, for a host that words the sentence itself.</param>
    /// <exception cref="ArgumentException">Code or message is empty.</exception>
    public Finding(string code, FindingSeverity severity, string message, params FindingNumber[] numbers)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(code);
        ArgumentException.ThrowIfNullOrWhiteSpace(message);
        Code = code;
        Severity = severity;
        Message = message;
        _numbers = Array.AsReadOnly((FindingNumber[])Guard.NotNull(numbers).Clone());
    }

    /// <summary>Stable dotted code.</summary>
    public string Code { get; }

    /// <summary>How much it weighs.</summary>
    public FindingSeverity Severity { get; }

    /// <summary>One sentence, invariant English.</summary>
    public string Message { get; }

    /// <summary>The numbers behind the sentence.</summary>
    public IReadOnlyList<FindingNumber> Numbers => _numbers;

    /// <inheritdoc/>
    public bool Equals(Finding? other) =>
        other is not null && Code == other.Code && Severity == other.Severity && _numbers.SequenceEqual(other._numbers);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Finding);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Code, Severity, _numbers.Count);

    /// <summary>Code and sentence.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => $"{Code}: {Message}";
}
