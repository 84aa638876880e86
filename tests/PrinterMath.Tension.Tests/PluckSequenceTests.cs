using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;
using Xunit.Abstractions;

namespace PrinterMath.Tension.Tests;

/// <summary>Taps between plucks, plucks that overlap, plucks cut off by the end of the recording; PRINTERMATH_COVERAGE_CASES sets another number of cases than 40.</summary>
public sealed class PluckSequenceTests(ITestOutputHelper output)
{
    private static int Cases =>
        int.TryParse(Environment.GetEnvironmentVariable("PRINTERMATH_COVERAGE_CASES"), NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : 40;

    // Fresh seeds 5001 and up: seeds 1 to 300 were looked at. No answer may be 3 % off; 95 % answered and 93 % inside, each less 3.29 standard deviations (99.9 % binomial).
    // Where the recording ends after 10 to 20 periods 95 % is not reached: 870 of 1000 were answered, the others refused as undecided between a span and one a third or a fifth as high, which they hardly resolve.
    [Theory]
    [InlineData(Between.Taps)]
    [InlineData(Between.LoudTaps)]
    [InlineData(Between.Overlap)]
    [InlineData(Between.Cut)]
    [InlineData(Between.Close)]
    public void SpanIsHeardAllTheSame(Between between)
    {
        int answered = 0, inside = 0, used = 0, plucks = 0;
        List<string> wrong = [];
        for (int seed = 5001; seed <= 5000 + Cases; seed++)
        {
            SeveralPlucks several = SeveralPlucks.Make(between, seed);
            PluckReading reading = Pluck.Read(several.Signal);
            if (!reading.TryGetFundamental(out Measured<Frequency> heard))
            {
                continue;
            }

            answered++;
            used += reading.Plucks.Count(p => p.IsUsed);
            plucks += several.Plucks;
            inside += heard.Interval(0.95).Contains(Frequency.FromHertz(several.FirstPartial)) ? 1 : 0;
            if (Math.Abs((heard.SiValue / several.FirstPartial) - 1) > 0.03)
            {
                wrong.Add($"seed {seed}: {heard} for {several.FirstPartial:F2} Hz");
            }
        }

        string report = $"{between}: answered {answered} of {Cases}, inside {inside}, wrong {wrong.Count}, plucks used {used} of {plucks}";
        output.WriteLine(report);
        Assert.True(wrong.Count == 0, $"{report}; {string.Join("; ", wrong)}");
        double least = between == Between.Cut ? 0.87 : 0.95;
        Assert.True(answered >= (least - (3.29 * Math.Sqrt(least * (1 - least) / Cases))) * Cases, report);
        Assert.True(inside >= (0.93 - (3.29 * Math.Sqrt(0.93 * 0.07 / answered))) * answered, report);
    }

    [Fact]
    public void TapsAreNamed()
    {
        PluckReading reading = Pluck.Read(SeveralPlucks.Make(Between.Taps, 5001).Signal);
        Finding taps = Assert.Single(reading.Findings, f => f.Code == PluckFindings.Handling);
        Assert.Equal(reading.Plucks.Count(p => p.Blocked is not null), taps.Numbers[0].Value);
        Assert.Contains(" plucks", reading.ToString(), StringComparison.Ordinal);
    }
}
