namespace CommissioningPass;

/// <summary>What the command line asks for.</summary>
/// <param name="Folder">Folder with the files.</param>
/// <param name="Output">Where the record goes.</param>
/// <param name="Report">Where the report goes.</param>
/// <param name="Help">Whether only the usage is wanted.</param>
internal sealed record PassArguments(string Folder, string Output, string Report, bool Help)
{
    internal const string Usage =
        """
        Usage: CommissioningPass [FOLDER] [--output FILE]

        Reads belt-a.wav, belt-b.wav, readings.csv, limits.csv, probe.csv and screws.csv from FOLDER (the
        demonstration if none is given), and drive.csv, acceleration.csv, walls.csv and fit.csv if they are there; prints a table for each step and writes the results to FILE
        (commissioning.json in the current folder if none is given), and a report for people beside it, with the
        same name and the ending .html (report.html if none is given).

        Exit code: 0 the pass was made, whatever the verdicts; 1 a file cannot be used; 2 wrong command line.
        """;

    /// <summary>Reads the command line.</summary>
    /// <returns>The arguments, or null and what is wrong.</returns>
    internal static (PassArguments? Arguments, string? Fault) Parse(string[] args)
    {
        string? folder = null;
        string? output = null;
        for (int i = 0; i < args.Length; i++)
        {
            switch (args[i])
            {
                case "--help" or "-h":
                    return (new PassArguments(string.Empty, string.Empty, string.Empty, Help: true), null);
                case "--output" when output is null && i + 1 < args.Length && args[i + 1].EndsWith(".html", StringComparison.OrdinalIgnoreCase):
                    return (null, "the record's name may not end in .html: the report takes that name.");
                case "--output" when output is null && i + 1 < args.Length && args[i + 1].Length > 0:
                    output = args[++i];
                    break;
                case "--output":
                    return (null, "--output needs one file name, once.");
                case ['-', ..]:
                    return (null, $"the option '{args[i]}' is not known.");
                default:
                    if (folder is not null)
                    {
                        return (null, $"one folder is enough; '{args[i]}' is the second.");
                    }

                    folder = args[i];
                    break;
            }
        }

        return (
            new PassArguments(
                folder ?? Path.Combine(AppContext.BaseDirectory, "data", "demo"),
                output ?? "commissioning.json",
                output is null ? "report.html" : Path.ChangeExtension(output, ".html"),
                Help: false),
            null);
    }
}
