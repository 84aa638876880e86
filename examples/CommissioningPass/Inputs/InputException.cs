namespace CommissioningPass.Inputs;

/// <summary>A file that cannot be used, in one line: which file, which line of it, which rule.</summary>
internal sealed class InputException : Exception
{
    /// <summary>A fault in a line of a file.</summary>
    /// <param name="file">File name without its folder.</param>
    /// <param name="line">Line, from 1; null when the fault is not in one line.</param>
    /// <param name="fault">What is wrong and what is expected.</param>
    public InputException(string file, int? line, string fault)
        : base(line is { } number ? FormattableString.Invariant($"{file}, line {number}: {fault}") : $"{file}: {fault}")
    {
    }

    /// <summary>An unnamed fault.</summary>
    public InputException()
    {
    }

    /// <summary>A fault in words.</summary>
    /// <param name="message">The words.</param>
    public InputException(string message)
        : base(message)
    {
    }

    /// <summary>A fault in words with its cause.</summary>
    /// <param name="message">The words.</param>
    /// <param name="innerException">The cause.</param>
    public InputException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
