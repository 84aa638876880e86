using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>docs/articles/tension.md shows code that is compiled here, prints what the library computes, and its pencil-and-paper numbers are those of plain arithmetic.</summary>
public sealed class ArticleNumbersTests
{
    private static readonly string Article = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "tension.md"));

    private static readonly ArticleExample Example = new();

    [Fact]
    public void Code_shown_is_code_compiled()
    {
        string source = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "ArticleExample.cs"));
        string[] regions = [.. source.Split("#region ")[1..].Select(part => string.Join('\n', part.Split("#endregion")[0].Split('\n')[1..^1].Select(line => line.Length > 8 ? line[8..] : string.Empty)))];
        string[] shown = [.. Article.Split("```csharp\n")[1..].Select(part => part.Split("\n```")[0])];
        Assert.Equal(regions, shown);
    }

    [Fact]
    public void Tension_and_its_budget_are_printed_as_computed()
    {
        Says($"**T = {Example.Tension.Result}**");
        Says($"**{Example.Tabled.Result}**, and {Example.Tabled.Largest.VarianceShare * 100:0} % of the variance is the density's");
        Says($"10.896 N. With clamped", Example.Pinned.SiValue, 10.896, 0.0005);
        Says($"the exact root gives 10.644 N", Example.Clamped.SiValue, 10.644, 0.0005);
        Says($"the library says {Example.Rigidity.Result}.");
        Says($"exact curve gives {0.00841 * 9.806 * 1e-3 / Example.Rigidity.Result.SiValue:0.00}. So");
        foreach (BudgetLine line in Example.Tension.Lines)
        {
            string share = (line.VarianceShare * 100).ToString(line.VarianceShare < 0.01 ? "0.0" : "0", CultureInfo.InvariantCulture);
            string row = Assert.Single(Article.Split('\n'), text => text.StartsWith($"| {line.Input.Name} |", StringComparison.Ordinal));
            Assert.EndsWith(FormattableString.Invariant($"| {line.SiContribution:0.000} | {share} % |"), row, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Window_pair_and_turns_are_printed_as_computed()
    {
        TensionWindow window = Example.Window;
        Says($"the library says {window.LargestForce.Result}.");
        Says($"the library says {window.Lower.Result}, and {window.Lower.Largest.VarianceShare * 100:0} % of that variance is the {window.Lower.Largest.Input.Name}");
        Says($"the library says {window.Upper.Result} and names the motor shaft");
        Assert.Equal(UpperTensionLimit.MotorShaft, window.BindingLimit);
        Says($"window is {window.Lower.Result.SiValue:0.0} to {window.Upper.Result.SiValue:0.0} N, of this span {window.LowerFrequency.Result.SiValue:0.0} to {window.UpperFrequency.Result.SiValue:0.0} Hz");
        Says($"12.4 + 1.645 · {window.Lower.Result.SiStandardUncertainty:0.00} = **{window.Recommended.SiValue:0.0} N**, {window.RecommendedFrequency.Result.SiValue:0.0} Hz");
        Says($"10.77 N is **outside**, with {Example.Verdict.ProbabilityOfConformity * 100:0.0} % left for being within");
        Assert.Equal(Conclusion.Outside, Example.Verdict.Conclusion);
        Says($"keeps no more than {window.SlackSideShareAt(Example.Tension.Result.Value) * 100:0} % of F");
        Says($"= {Example.Pair.RelativeDifference.Result.ToString("S %", CultureInfo.InvariantCulture).Replace('-', '−')}: different, for a limit of 5 %");
        Assert.Equal(Conclusion.Outside, Example.Pair.Verdict!.Conclusion);
        Says($"0.66 turns; the library says {Example.First.Turns.Result} and gives out half a turn: \"{Example.First}\"");
        Says($"78.6 Hz, {Example.After}. That is");
        Says($"{Example.Learned.GainPerTurn.ToString()[..^2]} N with its uncertainty");
        Says($"What is left is {Example.Second.Turns.Result.SiValue:0.00} turns");
        Says($"| turns, learned | {Example.Second.Turns.Result} |");
        Says($"| turns, EA unknown | {Example.First.Turns.Result} |");
        Says($"| lower limit | {window.Lower.Result} | share left on the slack side");
        Says($"| upper limit | {window.Upper.Result} | {window.Upper.Largest.Input.Name} |");
        Says($"| tension, metre weighed | {Example.Tension.Result} | frequency, then ends");
        Says($"| tension, typical density | {Example.Tabled.Result} | density |");
    }

    [Fact]
    public void Motor_and_axes_are_printed_as_computed()
    {
        Says($"the library says {Example.Margin.Required.Result} of 0.42 N·m, half of which may be used: **within**, {Example.Margin.Reserve.Result} in reserve");
        Assert.Equal(Conclusion.Within, Example.Margin.Verdict.Conclusion);
        Says($"the library says {Example.Largest.Budget.Result}.");
        Says($"all that the motors have, {Example.Best.Tension.Result} would be needed");
        Says($"serves {Example.Before.Budget.Result}, at the recommended 13.7 N {Example.Served.Budget.Result}");
        Says($"the library says {Example.Middle.LowestFrequency.Result} and {Example.Middle.HighestFrequency!.Result}, and");
        Says($"and {Example.Expected.Lowest.LowestFrequency.Result.ToString()[..^3]} to {Example.Expected.Highest.LowestFrequency.Result} for the lower mode");
        Says($"within ±{Example.Middle.LostMotion.Result.SiValue * 1e6:0} µm");
        Says($"79.936 at 10.77 N and 79.919 at 13.7 N");
        Assert.Equal(79.936, Steps(10.77), 5e-4);
        Assert.Equal(79.919, Steps(13.7), 5e-4);
    }

    // Plain arithmetic, no code of the library; the article rounds to the digits that the tolerances allow.
    [Fact]
    public void Pencil_and_paper_agree_with_the_library()
    {
        const double r = 0.020 * 2 / (2 * Math.PI);
        Assert.Equal(10.90, Math.Pow(2 * 0.25 * 72, 2) * 0.00841, 5e-3);
        Assert.Equal(10.90, IdealString.Tension(Frequency.FromHertz(72), Length.FromMeters(0.25), LinearDensity.FromGramsPerMeter(8.41)).Newtons, 5e-3);
        Assert.Equal(1.0118, 1 + (2 * Math.Sqrt(2.25e-5 / 10.9) / 0.25) + ((4 + (Math.PI * Math.PI / 2)) * 2.25e-5 / (10.9 * 0.0625)), 5e-5);

        HeadPosition corner = Example.Window.WorstPosition;
        Assert.Equal((60, 60), (corner.X.Millimeters, corner.Y.Millimeters));
        Assert.Equal(0.030 + 0.060 + (Math.PI * r / 2), Example.Layout.BeltA.FirstStrand(corner).Meters, 1e-12);
        double both = 0.8 + 0.72 - 0.06 + (2 * r) + (2 * Math.PI * r);
        Assert.Equal(both, (Example.Layout.BeltA.FirstStrand(corner) + Example.Layout.BeltA.SecondStrand(corner)).Meters, 1e-12);
        Assert.Equal(1.5127, both, 5e-5);

        double force = (10 * Math.Sqrt((0.35 * 0.35) + (0.85 * 0.85))) + 1.5;
        const double ratio = (0.003 * (5 / 6.3662) * (1 + (4 * 0.70711))) + (0.00225 * 5);   // bore 5 mm: half a turn at the motor, a quarter at four idlers
        double q = ((both - 0.1) / both) + 0.2;
        Assert.Equal(0.0203, ratio, 5e-5);
        Assert.Equal(force * q / (1 - (ratio * q)), Example.Window.Lower.Result.SiValue, 2e-4);   // κ from rounded constants
        double dragging = force + (ratio * 25.14);
        Assert.Equal(30 - (dragging * (q - 0.2 - 0.5)), Example.Window.Upper.Result.SiValue, 5e-3);   // 25.14 is rounded
        Assert.Equal(13500 * 0.0005 / (both + (Math.PI * r)), Example.Screw.GainPerTurn.SiValue, 1e-9);

        double sum = 0.5 * Math.Sqrt((0.35 * 0.35) + (0.85 * 0.85));
        Assert.Equal(((10.77 * ((1 / q) - ratio)) - 1.5) / sum, Example.Before.Budget.Result.SiValue, 0.02);   // 10.77 is rounded

        double reflected = (5.4e-6 + 0.55e-6) / (r * r);
        double mass = Math.Sqrt(Math.Pow(0.175 + reflected, 2) + Math.Pow(0.425 + reflected, 2));
        Assert.Equal((0.656, 0.147), (Math.Round(mass, 3), Math.Round(reflected, 3)));
        Assert.Equal((r * ((20 * mass) + 1.5 + (ratio * 13.7))) + 0.0085, Example.Margin.Required.Result.SiValue, 1e-5);   // 13.7 is rounded
        Assert.Equal((((0.21 - 0.0085) / r) - 1.5 - (ratio * 13.7)) / mass, Example.Largest.Budget.Result.SiValue, 1e-3);
        const double speed = 1.41421 * 0.2 / r;
        double volts = Math.Sqrt(Math.Pow((0.42 / 2.1213 * speed) + (1.6 * 2.1213), 2) + Math.Pow(50 * speed * 0.0028 * 2.1213, 2));
        Assert.InRange(volts, 17.5, 18.5);

        double strand = 1 / ((1 / (13500 * ((1 / 0.360) + (1 / 1.1527)))) + (r * r / (50 * 0.42)));
        Assert.Equal(2 * strand, Example.Middle.Stiffness.Result.SiValue, 5.0);   // strands rounded to 0.1 mm
        Assert.Equal(Math.Sqrt(2 * strand / 0.85) / (2 * Math.PI), Example.Middle.LowestFrequency.Result.SiValue, 5e-3);
        Assert.Equal(Math.Sqrt(2 * strand / 0.35) / (2 * Math.PI), Example.Middle.HighestFrequency!.Result.SiValue, 5e-3);
    }

    private static double Steps(double newtons) => AxisStiffness.StepsPerLength(
        200, 16, Length.FromMillimeters(2), 20, Force.FromNewtons(newtons), Force.FromNewtons(13500)).InverseMeters / 1000;

    private static void Says(FormattableString words) => Assert.Contains(words.ToString(CultureInfo.InvariantCulture), Article.Replace("\n", " ", StringComparison.Ordinal), StringComparison.Ordinal);

    private static void Says(FormattableString words, double computed, double printed, double rounding)
    {
        Says(words);
        Assert.Equal(printed, computed, rounding);
    }
}
