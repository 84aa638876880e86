using System.Globalization;
using System.Numerics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

/// <summary>Measured data that lie beside the tests; see data/README.md.</summary>
internal static class DataFile
{
    internal static string Path(string name) => System.IO.Path.Combine(AppContext.BaseDirectory, "data", name);

    internal static SampledSignal HammerResponse() => HammerChannel(2);

    internal static SampledSignal HammerForce() => HammerChannel(1);

    /// <summary>Frequencies in hertz and complex values of a response.</summary>
    internal static (double[] Frequencies, Complex[] Values) Response(string name)
    {
        double[][] rows = [.. File.ReadLines(Path(name)).Skip(1).Select(line => line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray())];
        return ([.. rows.Select(row => row[0])], [.. rows.Select(row => new Complex(row[1], row[2]))]);
    }

    private static SampledSignal HammerChannel(int column) => SampledSignal.FromSamples(
        [.. File.ReadLines(Path("vtoolbox_case1_time.csv")).Skip(1).Select(line => double.Parse(line.Split(',')[column], CultureInfo.InvariantCulture))],
        Frequency.FromHertz(1280));
}
