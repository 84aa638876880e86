using PrinterMath.Measurement;
using PrinterMath.Tramming.Tests.Simulation;
using UnitsNet;
using Xunit.Abstractions;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class ContactTransitionTests(ITestOutputHelper output)
{
    [Fact]
    public void TwoHeightsHaveAClosedForm()
    {
        // two groups: the fitted probabilities are the observed ones, logits ln 3 at 0 and -ln 3 at 0.1 mm; so mu = 0.05 mm, s = 0.1/(2 ln 3) mm
        ContactTransition contact = ContactTransition.Fit([.. Trials(0, 15, 5), .. Trials(.1, 5, 15)]);
        double spread = .1 / (2 * Math.Log(3));

        // mu = h (logit0/(logit0 - logit1)): variance of each logit 1/(n p q) = 4/15, derivatives h/2/(2 ln 3) each
        double u = .1 / (4 * Math.Log(3)) * Math.Sqrt(2 * 4.0 / 15);
        Assert.Equal(ContactMethod.Logistic, contact.Method);
        Assert.Equal(.05, contact.SurfaceHeight.Millimeters(), 1e-9);
        Assert.Equal(u, contact.SurfaceHeight.UncertaintyMillimeters(), 1e-9);
        Assert.True(contact.TryGetSpread(out Measured<Length> found));
        Assert.Equal(spread, found.Millimeters(), 1e-9);
        Assert.Equal(spread * Math.Sqrt(2 * 4.0 / 15) / (2 * Math.Log(3)), found.UncertaintyMillimeters(), 1e-9); // u(s)/s = u(logit difference)/(2 ln 3)
        Assert.Equal(0, contact.Parameters.Correlation(0, 1), 1e-6); // by symmetry
        Assert.Empty(contact.Findings);
    }

    [Fact]
    public void TheGaugeIsSubtractedAndBudgeted()
    {
        ContactTransition contact = ContactTransition.Fit([.. Trials(0, 15, 5), .. Trials(.1, 5, 15)], Measured.Of(Mm(.1), Mm(.02)));

        Assert.Equal(-.05, contact.SurfaceHeight.Millimeters(), 1e-9);
        Assert.Equal("gauge thickness", contact.Budget.Largest.Input.Name);
        Assert.True(contact.At(Mm(1), Mm(2)).StandardUncertaintyMeters < .02e-3); // the gauge moves all points alike
        Assert.Equal(-.05, contact.At(Mm(1), Mm(2)).Z.Millimeters, 1e-9);
    }

    [Fact]
    public void AnswersThatChangeSidesOnceGiveTheInterval()
    {
        ContactTransition contact = ContactTransition.Fit([.. Trials(0, 3, 0), .. Trials(.05, 0, 3), .. Trials(.1, 0, 3)]);

        Assert.Equal(ContactMethod.Interval, contact.Method);
        Assert.Equal(.025, contact.SurfaceHeight.Millimeters(), 1e-12);
        Assert.Equal(.05 / Math.Sqrt(12), contact.SurfaceHeight.UncertaintyMillimeters(), 1e-12);
        Assert.Equal("contact.separable", Assert.Single(contact.Findings).Code);
        Assert.False(contact.TryGetSpread(out _));
        Assert.Throws<IndeterminateException>(() => contact.Parameters);
    }

    [Fact]
    public void AHeightWithBothAnswersBelongsToNeitherSide()
    {
        ContactTransition contact = ContactTransition.Fit([.. Trials(0, 3, 0), .. Trials(.05, 1, 2), .. Trials(.1, 0, 3)]);
        Assert.Equal(.1 / Math.Sqrt(12), contact.SurfaceHeight.UncertaintyMillimeters(), 1e-12);
    }

    [Theory]
    [InlineData(3, 0, 3, 0, "contact.oneSided")]
    [InlineData(0, 3, 0, 3, "contact.oneSided")]
    [InlineData(0, 3, 3, 0, "contact.reversed")]
    [InlineData(1, 9, 9, 1, "contact.reversed")]
    [InlineData(3, 2, 2, 3, "contact.transition.unclear")]
    public void TrialsWithoutAContactSaySo(int touchLow, int clearLow, int touchHigh, int clearHigh, string code)
    {
        ContactTransition contact = ContactTransition.Fit([.. Trials(0, touchLow, clearLow), .. Trials(.1, touchHigh, clearHigh)]);

        Assert.Equal(code, Assert.Single(contact.Findings).Code);
        Assert.False(contact.TryGetSurfaceHeight(out _));
        Assert.Equal(code, Assert.Throws<IndeterminateException>(() => contact.SurfaceHeight).Finding!.Code);
        Assert.Throws<IndeterminateException>(() => contact.Method);
    }

    [Fact]
    public void AContradictingTrialIsNamed()
    {
        var trials = new List<ContactTrial>();
        for (int i = 0; i <= 10; i++)
        {
            trials.AddRange(Trials(.01 * i, i < 5 ? 3 : 0, i < 5 ? 0 : 3));
        }

        trials.Add(ContactTrial.At(Mm(.1), ContactOutcome.Touching));
        ContactTransition contact = ContactTransition.Fit(trials);

        Finding finding = Assert.Single(contact.Findings);
        Assert.Equal("contact.contradiction", finding.Code);
        Assert.Equal(33, Assert.Single(finding.Numbers).Value);
    }

    [Fact]
    public void CallersMistakesAreRefused()
    {
        Assert.Throws<ArgumentException>(() => ContactTransition.Fit([ContactTrial.At(Mm(0), ContactOutcome.Clear)]));
        Assert.Throws<ArgumentNullException>(() => ContactTransition.Fit(null!));
        ArgumentException unit = Assert.Throws<ArgumentException>(() => ContactTransition.Fit([.. Trials(0, 3, 0), .. Trials(50, 0, 3)]));
        Assert.Contains("unit", unit.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ContactTransition.Fit([.. Trials(0, 3, 0), .. Trials(.1, 0, 3)], default));
        Assert.Throws<ArgumentOutOfRangeException>(() => ContactTransition.Fit([.. Trials(0, 3, 0), .. Trials(.1, 0, 3)], Measured.Exact(Mm(-1))));
    }

    // spread of a reading in mm, heights tried, repeats at each; steps of 0.01 mm about a contact anywhere within a step
    [Theory]
    [InlineData(.01, 11, 5)]
    [InlineData(.01, 11, 20)]
    [InlineData(.02, 15, 8)]
    [InlineData(.005, 9, 10)]
    public void IntervalsOfTheCurveHoldTheTruth(double spread, int heights, int repeats)
    {
        var check = new CoverageCheck($"logistic {spread} mm, {heights} x {repeats}");
        int intervals = 0, none = 0, contradictions = 0;
        for (int seed = 1; seed <= CoverageCheck.Cases; seed++)
        {
            var random = new Random(seed);
            double truth = .01 * (random.NextDouble() - .5);
            var trials = new List<ContactTrial>();
            for (int i = 0; i < heights * repeats; i++)
            {
                double h = .01 * ((i % heights) - (heights / 2));
                double u = random.NextDouble();
                double threshold = truth + (spread * Math.Log(u / (1 - u))); // a logistic deviate
                trials.Add(ContactTrial.At(Mm(h), h <= threshold ? ContactOutcome.Touching : ContactOutcome.Clear));
            }

            ContactTransition contact = ContactTransition.Fit(trials);
            none += contact.TryGetSurfaceHeight(out Measured<Length> height) ? 0 : 1;
            if (height.HasValue)
            {
                intervals += contact.Method == ContactMethod.Interval ? 1 : 0;
                check.Add(height.Interval().Contains(Mm(truth)), height.SiStandardUncertainty);
                contradictions += contact.Findings.Any(f => f.Code == "contact.contradiction") ? 1 : 0;
            }
        }

        output.WriteLine($"{check.Report}; {intervals} intervals, {none} without, {contradictions} contradictions");
        check.Assert(.93, .97);
        Assert.True(contradictions <= .1 * CoverageCheck.Cases, $"{contradictions} contradictions"); // 5 % by design for large samples
    }

    [Fact]
    public void TheBracketHoldsTheTruthAlwaysAndItsUncertaintyIsRight()
    {
        double squares = 0, u = 0;
        for (int seed = 1; seed <= CoverageCheck.Cases; seed++)
        {
            double truth = new Random(seed).NextDouble() - .5;
            ContactSearch search = ContactSearch.Between(Mm(1), Mm(-1));
            while (search.TryGetNext(out ContactMove? move))
            {
                search = search.With(move.Height.Millimeters <= truth ? ContactOutcome.Touching : ContactOutcome.Clear);
            }

            Measured<Length> height = search.Reading.SurfaceHeight;
            Assert.True(height.Interval().Contains(Mm(truth)) || Math.Abs(height.Millimeters() - truth) <= .005 + 1e-9);
            squares += (height.Millimeters() - truth) * (height.Millimeters() - truth) / CoverageCheck.Cases;
            u = height.UncertaintyMillimeters();
        }

        // root mean square of n errors: relative scatter of a rectangular one's is 1/sqrt(5 n); 4 of those
        Assert.InRange(Math.Sqrt(squares) / u, 1 - (4 / Math.Sqrt(5 * CoverageCheck.Cases)), 1 + (4 / Math.Sqrt(5 * CoverageCheck.Cases)));
    }

    private static IEnumerable<ContactTrial> Trials(double height, int touching, int clear) =>
        Enumerable.Repeat(ContactTrial.At(Mm(height), ContactOutcome.Touching), touching)
            .Concat(Enumerable.Repeat(ContactTrial.At(Mm(height), ContactOutcome.Clear), clear));
}
