using System.Globalization;
using System.Runtime.InteropServices;

namespace PrinterMath.Benchmarks;

/// <summary>Answers the comparison script: "about", "inputs folder", "result task file", "bytes task", "time task calls", one line each.</summary>
internal static class Server
{
    internal static void Run(TextReader input, TextWriter output)
    {
        while (input.ReadLine() is { } line)
        {
            string[] words = line.Split(' ', 3);
            output.WriteLine(words[0] switch
            {
                "about" => RuntimeInformation.FrameworkDescription,
                "bytes" => Allocated(Work.All[words[1]].Value),
                "inputs" => WriteInputs(words[1]),
                "result" => Write(words[2], Work.All[words[1]].Value()),
                _ => Time(Work.All[words[1]].Value, int.Parse(words[2], CultureInfo.InvariantCulture)),
            });
            output.Flush();
        }
    }

    /// <summary>Nanoseconds of processor time a call, all threads of this process, after one call that is not counted.</summary>
    private static string Time(Func<double[]> call, int calls)
    {
        call();
        TimeSpan begin = Environment.CpuUsage.TotalTime;
        for (int i = 0; i < calls; i++)
        {
            call();
        }

        return ((Environment.CpuUsage.TotalTime - begin).TotalNanoseconds / calls).ToString("R", CultureInfo.InvariantCulture);
    }

    private static string Allocated(Func<double[]> call)
    {
        call();
        long before = GC.GetAllocatedBytesForCurrentThread();
        call();
        return (GC.GetAllocatedBytesForCurrentThread() - before).ToString(CultureInfo.InvariantCulture);
    }

    private static string WriteInputs(string folder)
    {
        Write(Path.Combine(folder, "vibration"), Inputs.Vibration(192_000));
        Write(Path.Combine(folder, "pluck"), Inputs.Pluck(144_000));
        Write(Path.Combine(folder, "nodes"), Inputs.Nodes(Work.GridSide));
        Write(Path.Combine(folder, "grid"), Inputs.GridHeights(Work.GridSide));
        Write(Path.Combine(folder, "xs"), Inputs.Places(Work.Places, 3));
        Write(Path.Combine(folder, "ys"), Inputs.Places(Work.Places, 4));
        Write(Path.Combine(folder, "widths"), [.. Inputs.Places(Work.Places, 6).Select(u => 4e-4 + (1e-3 * u))]);
        Write(Path.Combine(folder, "points25"), [.. Inputs.Points(5).SelectMany(p => new[] { p.XMeters, p.YMeters, p.ZMeters })]);
        Write(Path.Combine(folder, "points100"), [.. Inputs.Points(10).SelectMany(p => new[] { p.XMeters, p.YMeters, p.ZMeters })]);
        Write(Path.Combine(folder, "points225"), [.. Inputs.Points(15).SelectMany(p => new[] { p.XMeters, p.YMeters, p.ZMeters })]);
        Write(Path.Combine(folder, "points1024"), [.. Inputs.Points(32).SelectMany(p => new[] { p.XMeters, p.YMeters, p.ZMeters })]);
        Write(Path.Combine(folder, "points10000"), [.. Inputs.Points(100).SelectMany(p => new[] { p.XMeters, p.YMeters, p.ZMeters })]);
        Write(Path.Combine(folder, "design"), Inputs.Places(3000, 7));
        Write(Path.Combine(folder, "response"), Inputs.Places(1000, 8));
        WriteSequences(Path.Combine(folder, "sequences"), Inputs.Modes());
        return WriteSequences(Path.Combine(folder, "sequences-wide"), Inputs.WideModes());
    }

    /// <summary>Every candidate's impulses: four amplitudes, four times, filled up with zeros.</summary>
    private static string WriteSequences(string path, Resonance.Mode[] modes)
    {
        var choice = Resonance.SequenceSearch.For(modes, new Resonance.SequenceLimits { Frequencies = 150 });
        double[] rows = new double[choice.Candidates.Count * 8];
        for (int i = 0; i < choice.Candidates.Count; i++)
        {
            choice.Candidates[i].Sequence.Amplitudes.CopyTo(rows.AsSpan(8 * i));
            choice.Candidates[i].Sequence.Times.CopyTo(rows.AsSpan((8 * i) + 4));
        }

        return Write(path, rows);
    }

    private static string Write(string path, double[] values)
    {
        File.WriteAllBytes(path, MemoryMarshal.AsBytes<double>(values));
        return "done";
    }
}
