using System.Text.RegularExpressions;

namespace CommissioningPass.Inputs;

/// <summary>What the folder's README.md, if it is there, says the files are about: its heading and first paragraph, as plain text.</summary>
/// <param name="Heading">Heading without its marks; empty when there is none.</param>
/// <param name="Paragraph">First paragraph; empty when there is none.</param>
internal sealed partial record Scenario(string Heading, string Paragraph)
{
    private const int MostLines = 200;
    private const int MostLetters = 1000;

    internal static Scenario Read(string folder)
    {
        string path = Path.Combine(folder, "README.md");
        try
        {
            return File.Exists(path) ? Of([.. File.ReadLines(path).Take(MostLines).Select(line => line.Trim())]) : new Scenario(string.Empty, string.Empty);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return new Scenario(string.Empty, string.Empty);
        }
    }

    private static Scenario Of(string[] lines)
    {
        int heading = Array.FindIndex(lines, line => line.StartsWith('#'));
        IEnumerable<string> paragraph = lines.Skip(heading + 1)
            .SkipWhile(line => line.Length == 0)
            .TakeWhile(line => line.Length > 0 && line[0] is not ('#' or '|'));
        return new Scenario(
            heading < 0 ? string.Empty : Plain(lines[heading].TrimStart('#')),
            Plain(string.Join(' ', paragraph)) is [.. var sentence, ':'] ? sentence + "." : Plain(string.Join(' ', paragraph)));
    }

    private static string Plain(string marked)
    {
        string text = Marks().Replace(marked, string.Empty).Trim();
        return text.Length <= MostLetters ? text : text[..MostLetters] + "…";
    }

    [GeneratedRegex(@"\*\*|`", RegexOptions.CultureInvariant)]
    private static partial Regex Marks();
}
