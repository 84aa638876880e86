using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Architecture.Tests;

public sealed class ReadmeTests
{
    [Fact]
    public void Readme_shows_the_code_that_is_compiled_here()
    {
        string source = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "ReadmeExample.cs"));
        string[] region = source.Split("#region readme")[1].Split("#endregion")[0].Split('\n')[1..^1];
        string shown = string.Join('\n', region.Select(line => line.Length > 8 ? line[8..] : string.Empty));
        Assert.Contains(shown, File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "README.md")), StringComparison.Ordinal);
    }

    [Fact]
    public void The_code_of_the_readme_reaches_a_verdict()
    {
        TextWriter console = Console.Out;
        using var heard = new StringWriter();
        Console.SetOut(heard);
        try
        {
            ReadmeExample.Run(Plucked(hertz: 110));
        }
        finally
        {
            Console.SetOut(console);
        }

        Assert.StartsWith("within: ", heard.ToString(), StringComparison.Ordinal);
        Assert.Contains("most of the uncertainty is in the ", heard.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Eight decaying partials after a short silence, with a little noise.</summary>
    private static SampledSignal Plucked(double hertz)
    {
        var random = new Random(1);
        double[] samples = new double[48_000];
        for (int i = 0; i < samples.Length; i++)
        {
            double t = (i / 24_000.0) - 0.2;
            samples[i] = 1e-4 * ((2 * random.NextDouble()) - 1);
            for (int n = 1; n <= 8 && t > 0; n++)
            {
                samples[i] += 0.1 / n * Math.Exp(-t * 3 * n) * Math.Sin(2 * Math.PI * n * hertz * t);
            }
        }

        return SampledSignal.FromSamples(samples, Frequency.FromKilohertz(24));
    }
}
