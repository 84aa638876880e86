using PrinterMath.Measurement;
using Xunit.Abstractions;

namespace PrinterMath.Tramming.Tests;

/// <summary>docs/articles/tramming.md shows code that is compiled here, prints what the library computes, and its pencil-and-paper numbers are those of plain arithmetic.</summary>
public sealed class ArticleNumbersTests(ITestOutputHelper output)
{
    private static readonly string Article = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "tramming.md"));

    private static readonly ArticleExample Example = new();

    [Fact]
    public void CodeShownIsCodeCompiled()
    {
        string source = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "ArticleExample.cs"));
        string[] regions = [.. source.Split("#region ")[1..].Select(part => string.Join('\n', part.Split("#endregion")[0].Split('\n')[1..^1].Select(line => line.Length > 8 ? line[8..] : string.Empty)))];
        string[] shown = [.. Article.Split("```csharp\n")[1..].Select(part => part.Split("\n```")[0])];
        Assert.Equal(regions, shown);
    }

    [Fact]
    public void NumbersArePrintedAsComputed()
    {
        TrammingSequence sequence = Example.Sequence;
        string[] words =
        [
            $"the library says \"{Example.Plan.Turns[1]}\" and \"{Example.Plan.Turns[2]}\"",
            $"{Example.Plan.PredictedPlane.HeightSpread} of spread",
            $"front right {sequence.Responses[1].EffectiveLead}, rear {sequence.Responses[2].EffectiveLead}",
            $"κ = {sequence.ConvergenceFactor}",
            $"\"{sequence.NextTurns[1]}\" and \"{sequence.NextTurns[2]}\"",
            $"{sequence.PredictedSpread} after them",
            $"| effective lead, front right | {sequence.Responses[1].EffectiveLead} |",
            $"| spread after the next turns | {sequence.PredictedSpread} |",
            $"spread is {sequence.Plane.HeightSpread}: **{(Example.Verdict.Conclusion == Conclusion.Within ? "within" : Example.Verdict.Conclusion == Conclusion.Outside ? "outside" : "undecided")}**",
            $"forecast is \"{Example.Forecast}\"",
            $"at best {Example.Forecast.Floor}",
            $"so \"{Example.Reading}\"",
            $"it touches already at {Example.Zero.Height}",
            $"| height zero, hot | {Example.Zero.Height} |",
            $"the gap is 0.31 − 0.106 = 0.204 mm: {Example.Gap}",
            $"\"{Example.Held.Turns[1]}\", \"{Example.Held.Turns[2]}\"; the finding `{Example.Held.Findings.Single(finding => finding.Code.StartsWith("plan.", StringComparison.Ordinal)).Code}` says so",
            $"turn the others by {Example.Fewest.Turns[0].Turns} and {Example.Fewest.Turns[2].Turns}",
            $"known to 1/√18 of itself: {Example.Repeats.StandardDeviation}",
            $"= 9.4, so {Example.ReadingsNeeded} readings",
            $"0.00255 rad or {Example.Corner.Deviation} from square, {Example.Square}",
            $"| squareness | {Example.Corner.Deviation} |",
        ];
        foreach (string word in words)
        {
            output.WriteLine(word);
        }

        Assert.Empty(sequence.Diagnoses);
        Assert.Contains(Example.Plane.Findings, finding => finding.Code == "plane.misfit");
        Assert.All(words, word => Assert.Contains(word, Article.Replace("\n", " ", StringComparison.Ordinal), StringComparison.Ordinal));
    }

    // Plain arithmetic, no code of the library; the article rounds to the digits that the tolerances allow.
    [Fact]
    public void PencilAndPaperAgreeWithTheLibrary()
    {
        double b = (((.19 + .31 + .41) / 3) - ((.02 + .10 + .21) / 3)) / 200;
        double c = (((.21 + .29 + .41) / 3) - ((.02 + .11 + .19) / 3)) / 200;
        Assert.Equal(b, Example.Plane.SlopeX.SiValue, 1e-12);
        Assert.Equal(c, Example.Plane.SlopeY.SiValue, 1e-12);
        Assert.Equal((.000967, .000983), (Math.Round(b, 6), Math.Round(c, 6)));
        Assert.Equal(.1933, 200 * b, 5e-5);
        Assert.Equal(.2933, (100 * b) + (200 * c), 5e-5);
        Assert.Equal(.276, 200 * b / .7, 5e-4);
        Assert.Equal(.419, ((100 * b) + (200 * c)) / .7, 5e-4);
        Assert.Equal(.2762, Example.Plan.Turns[1].Turns.SiValue, 5e-5);
        Assert.Contains("0.1933/0.7 = 0.276", Article, StringComparison.Ordinal);
        Assert.Contains("0.2933/0.7 = 0.419", Article, StringComparison.Ordinal);
        double after = (((.016 + .033 + .040) / 3) - ((.014 + .010 + .030) / 3)) / 200 * 200;
        Assert.Equal(.0117, after, 5e-5);
        Assert.Equal(.654, (.1933 - after) / (100.0 / 360), 5e-4);
        Assert.Contains("(0.1933 − 0.0117)/(100/360) = 0.654", Article, StringComparison.Ordinal);
    }

    [Fact]
    public void ZeroLimitsAndInstrumentAgreeWithPencilAndPaper()
    {
        Assert.Equal((.14, .12), (Math.Round(Example.Reading.Clear.Millimeters, 9), Math.Round(Example.Reading.Touching.Millimeters, 9)));
        double bracket = .02 / Math.Sqrt(12);
        Assert.Equal((.0058, .0070), (Math.Round(bracket, 4), Math.Round(Math.Sqrt((bracket * bracket) + (.004 * .004)), 4)));
        Assert.Equal(.03e-3, Example.Reading.SurfaceHeight.SiValue, 1e-12);
        Assert.Equal(.106e-3, Example.Zero.Height.SiValue, 1e-12);
        Assert.Equal(.076, 19e-6 * 20 * 200, 1e-12);
        Assert.Equal(.1, Example.Held.Turns[0].HeightChange.SiValue * 1e3, 1e-9);
        Assert.Equal(Example.Plan.Turns.Skip(1).Select(turn => turn.ToString()), Example.Posted.Turns.Select(turn => turn.ToString()));
        Assert.Equal(0, Example.Fewest.Turns[1].HeightChange.SiValue, 1e-12);
        double[] repeats = [4, 7, 2, 5, 9, 3, 6, 4, 8, 2];
        Assert.Equal(54, repeats.Sum(r => (r - 5) * (r - 5)));
        Assert.Equal(Math.Sqrt(6), Example.Repeats.StandardDeviation.SiValue * 1e6, 1e-9);
        Assert.Equal(9.4, Math.Round(6 / (.8 * .8), 1));
        Assert.Equal(.00255, .36 / (Math.Sqrt(2) * 100), 5e-6);
        Assert.Equal(.00255, Example.Corner.Deviation.SiValue, 5e-6);
    }

}
