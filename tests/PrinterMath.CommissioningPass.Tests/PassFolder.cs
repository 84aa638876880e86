using CommissioningPass;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>A folder of its own for one test, begun as a copy of the demonstration, and the program run on it.</summary>
internal sealed class PassFolder : IDisposable
{
    private static readonly string Data = Path.Combine(AppContext.BaseDirectory, "data");

    internal PassFolder(string copyOf = "demo")
    {
        Root = Directory.CreateTempSubdirectory("pass").FullName;
        foreach (string file in Directory.GetFiles(Path.Combine(Data, copyOf)))
        {
            File.Copy(file, Path.Combine(Root, Path.GetFileName(file)));
        }
    }

    internal string Root { get; }

    internal string Record => Path.Combine(Root, "out", "commissioning.json");

    internal string Report => Path.ChangeExtension(Record, ".html");

    public void Dispose() => Directory.Delete(Root, recursive: true);

    internal string PathOf(string file) => Path.Combine(Root, file);

    /// <summary>Leaves the first probing alone.</summary>
    internal void LeaveOnePass()
    {
        File.Delete(PathOf("again.csv"));
        File.Delete(PathOf("turned.csv"));
    }

    /// <summary>Replaces text that must stand in the file.</summary>
    internal void Change(string file, string from, string to)
    {
        string text = File.ReadAllText(PathOf(file));
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(PathOf(file), text.Replace(from, to, StringComparison.Ordinal));
    }

    internal (int ExitCode, string Output, string Error) Run()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Record)!);
        return Run(Root, "--output", Record);
    }

    internal static (int ExitCode, string Output, string Error) Run(params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int exitCode = PassProgram.Run(args, output, error);
        return (exitCode, output.ToString(), error.ToString());
    }
}
