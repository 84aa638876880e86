using WorkshopSimulator;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>The simulator's finite elements against limits that are known exactly.</summary>
public sealed class StiffSpanTests
{
    /// <summary>A string of almost no stiffness: partials at n/(2L)·sqrt(T/m). The stiffness left raises the fifth by 1e-7.</summary>
    [Fact]
    public void LimpSpanIsAString()
    {
        var span = new StiffSpan(0.25, 36, 0.009, 1e-9, 0, 0);
        IReadOnlyList<SpanMode> modes = span.Modes(5);
        double first = Math.Sqrt(36 / 0.009) / (2 * 0.25);
        for (int n = 1; n <= 5; n++)
        {
            Assert.InRange(modes[n - 1].FrequencyHertz / (n * first), 1 - 1e-7, 1 + 1e-5);
        }
    }

    /// <summary>Without tension a beam: squares of π (pinned) and 4.730040745 (clamped), Blevins 1979, Formulas for Natural Frequency and Mode Shape, table 8-1 (from memory).</summary>
    [Theory]
    [InlineData(0, Math.PI)]
    [InlineData(double.PositiveInfinity, 4.730040745)]
    public void SlackSpanIsABeam(double spring, double root)
    {
        var span = new StiffSpan(0.25, 0, 0.009, 2e-5, spring, spring);
        double expected = root * root / (2 * Math.PI * 0.25 * 0.25) * Math.Sqrt(2e-5 / 0.009);
        Assert.InRange(span.Modes(1)[0].FrequencyHertz / expected, 1 - 1e-5, 1 + 1e-5);
    }

    /// <summary>Finer elements move the pitch by less than a part in a million, a hundredth of what any reading is worth.</summary>
    [Fact]
    public void TheMeshIsFineEnough()
    {
        var span = new StiffSpan(0.3, 50, 0.0084, 2e-5, 0.02, double.PositiveInfinity);
        Assert.InRange(span.Modes(1)[0].FrequencyHertz / span.Modes(1, 96)[0].FrequencyHertz, 1 - 1e-6, 1 + 1e-6);
    }

    [Fact]
    public void TheSameSeedGivesTheSameVisit()
    {
        WorkshopVisit first = Workshop.Visit(7);
        WorkshopVisit second = Workshop.Visit(7);
        Assert.Equal(first.RecordingB, second.RecordingB);
        Assert.Equal(first.Readings, second.Readings);
        Assert.NotEqual(first.Readings, Workshop.Visit(8).Readings);
    }
}
