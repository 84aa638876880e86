using PrinterMath.Measurement;
using Spectre.Console;

namespace CommissioningPass.Report;

/// <summary>Prints a table for each step; plain text of 80 columns when the output is not a terminal.</summary>
internal static class PassTables
{
    private const int PlainWidth = 80;
    private const int WidestTerminal = 120;
    private const int LabelWidth = 18;

    internal static void Print(IReadOnlyList<PassStep> steps, TextWriter output, bool terminal)
    {
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = terminal ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = terminal ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(output),
        });
        console.Profile.Width = terminal ? Math.Clamp(console.Profile.Width, PlainWidth, WidestTerminal) : PlainWidth;
        console.Profile.Capabilities.Unicode = true;
        foreach (PassStep step in steps)
        {
            Print(console, step);
        }
    }

    private static void Print(IAnsiConsole console, PassStep step)
    {
        console.MarkupLineInterpolated($"[bold]{step.Title}[/]");
        Table table = new Table().Border(TableBorder.Simple).AddColumns("Quantity", "Value", "Limit", "Verdict", "What to do");
        table.Columns[0].Width(LabelWidth);
        table.Columns[1].NoWrap();
        table.Columns[2].NoWrap();
        foreach (PassEntry entry in step.Entries)
        {
            table.AddRow(
                new Text(entry.Label),
                new Text(entry.Text),
                new Text(entry.LimitText ?? string.Empty),
                Verdict(entry.Verdict),
                new Text(entry.WhatToDo ?? string.Empty));
        }

        console.Write(table);
        foreach ((string about, Finding finding) in step.Findings)
        {
            Bullet(console, $"{finding.Severity} on {about}: {finding.Message}");
        }

        foreach (string remark in step.Remarks)
        {
            Bullet(console, "Note: " + remark);
        }

        foreach (string caution in step.Cautions)
        {
            Bullet(console, "CAUTION: " + caution);
        }

        console.WriteLine();
    }

    private static Text Verdict(IVerdict? verdict) => verdict?.Conclusion switch
    {
        null => new Text(string.Empty),
        Conclusion.Within => new Text("within", new Style(Color.Green)),
        Conclusion.Outside => new Text("OUTSIDE", new Style(Color.Red)),
        _ => new Text("undecided", new Style(Color.Yellow)),
    };

    private static void Bullet(IAnsiConsole console, string text)
    {
        Grid grid = new Grid().AddColumn(new GridColumn().Width(1).NoWrap()).AddColumn();
        grid.AddRow(new Text("-"), new Text(text));
        console.Write(grid);
    }
}
