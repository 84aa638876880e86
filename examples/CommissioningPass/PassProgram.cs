using CommissioningPass.Inputs;
using CommissioningPass.Report;

namespace CommissioningPass;

/// <summary>The program behind the command line, with its writers handed in.</summary>
public static class PassProgram
{
    /// <summary>Makes the pass.</summary>
    /// <param name="args">Command line.</param>
    /// <param name="output">Tables go here.</param>
    /// <param name="error">A fault goes here, in one line.</param>
    /// <param name="terminal">Whether <paramref name="output"/> is a terminal: colours and its own width.</param>
    /// <returns>Exit code: 0 made, 1 a file cannot be used, 2 wrong command line.</returns>
    public static int Run(string[] args, TextWriter output, TextWriter error, bool terminal = false)
    {
        (PassArguments? arguments, string? fault) = PassArguments.Parse(args);
        if (arguments is null)
        {
            error.WriteLine($"commissioning pass: {fault} Try --help.");
            return 2;
        }

        if (arguments.Help)
        {
            output.WriteLine(PassArguments.Usage);
            return 0;
        }

        try
        {
            IReadOnlyList<PassStep> steps = Pass.Make(arguments.Folder);
            Write(arguments.Output, "record", () => PassRecord.Write(steps, arguments.Output));
            Write(arguments.Report, "report", () => HtmlReport.Write(steps, Scenario.Read(arguments.Folder), Path.GetFileName(arguments.Output), arguments.Report));
            PassTables.Print(steps, output, terminal);
            output.WriteLine($"Written: {arguments.Output}");
            output.WriteLine($"Report: {arguments.Report}");
            return 0;
        }
        catch (InputException bad)
        {
            error.WriteLine(bad.Message);
            return 1;
        }
    }

    private static void Write(string path, string what, Action write)
    {
        try
        {
            write();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new InputException(path, null, $"the {what} cannot be written; " + fault.Message);
        }
    }
}
