using System.Text.RegularExpressions;

namespace CommissioningPass.Report;

/// <summary>How the report spells numbers: the one place where <c>12.34(5) N</c> becomes <c>12.34 ± 0.05 N</c>.</summary>
internal static partial class Spelling
{
    /// <summary>Any sentence or value, its measured numbers written out and its minus signs as such.</summary>
    internal static string Of(string text) => Minus(Concise().Replace(text, WriteOut));

    internal static string Minus(string text) => HyphenBeforeNumber().Replace(text, "−").Replace(" - ", " − ", StringComparison.Ordinal);

    /// <summary>As <see cref="Of"/>, for running text: a line never breaks inside a number with its unit.</summary>
    internal static string Running(string text) => BreakInsideNumber().Replace(Of(text), "\u00A0");

    /// <summary>Running text as a sentence: a capital first, a stop last.</summary>
    internal static string Sentence(string text)
    {
        string spelled = Running(text.Trim());
        return spelled.Length == 0 ? spelled : char.ToUpperInvariant(spelled[0]) + spelled[1..] + (spelled[^1] is '.' or '!' or '?' ? string.Empty : ".");
    }

    private static string WriteOut(Match match)
    {
        string value = match.Groups["value"].Value;
        string uncertainty = match.Groups["u"].Value;
        int point = value.IndexOf('.', StringComparison.Ordinal);
        string power = match.Groups["power"].Value;
        if (point >= 0 && !uncertainty.Contains('.', StringComparison.Ordinal))
        {
            uncertainty = "0." + uncertainty.PadLeft(value.Length - point - 1, '0');
        }

        return power.Length == 0 ? $"{value} ± {uncertainty}" : $"({value} ± {uncertainty}){power}";
    }

    [GeneratedRegex(@"(?<value>(?<![\w.])-?[0-9]+(\.[0-9]+)?)\((?<u>[0-9]+(\.[0-9]+)?)\)(?<power>E-?[0-9]+)?", RegexOptions.CultureInvariant)]
    private static partial Regex Concise();

    [GeneratedRegex(@"(?<=[0-9])\ (?=±\ [0-9])|(?<=±)\ (?=[0-9])|(?<=[0-9])\ (?=(N|Hz|mm|µm|mrad|ms|s|m/s²|g/m|dB|%)(?![\w/]))", RegexOptions.CultureInvariant)]
    private static partial Regex BreakInsideNumber();

    [GeneratedRegex(@"(?<![\w.\-])-(?=[0-9])", RegexOptions.CultureInvariant)]
    private static partial Regex HyphenBeforeNumber();
}
