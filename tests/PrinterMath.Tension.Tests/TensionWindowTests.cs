using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class TensionWindowTests
{
    private static readonly BeltSpan Span = new(
        Measured.Of(Length.FromMillimeters(200), Length.FromMillimeters(0.5)), Measured.Of(LinearDensity.FromGramsPerMeter(8.4), LinearDensity.FromGramsPerMeter(0.1)));

    private static readonly BeltDriveOptions Known = new()
    {
        MassX = Measured.Exact(Mass.FromKilograms(0.5)),
        Friction = Measured.Exact(Force.FromNewtons(1)),
        WorkingStrength = Measured.Exact(ForcePerLength.FromNewtonsPerMillimeter(10)),
        IdlerLoad = Measured.Exact(Force.FromNewtons(200)),
        BearingFriction = Measured.Exact(0.0),
        BendingLoss = Measured.Exact(0.0),
    };

    // Centre distance 400, carriage 40, r = 6: at x = 350 the strands are 330 and 400 + 30 + 6π = 448.85 mm; at x = 50 they are 30 and 748.85 (sum 778.85 each).
    // Worst share 748.85/778.85 = 0.961482, head near the motor. F = 0.5·10 + 1 = 6 N, slack share 0.2: T0 ≥ 6·1.161482 = 6.968892 N.
    // Belt: 10·6 − 6·0.961482 = 54.231108 N.
    [Fact]
    public void Window_by_hand()
    {
        TensionWindow window = Window(Known, 10, 0.2);
        Assert.Equal(6.968892, window.Lower.Result.SiValue, 1e-5);
        Assert.Equal(54.231108, window.Upper.Result.SiValue, 1e-5);
        Assert.Equal(UpperTensionLimit.BeltStrength, window.BindingLimit);
        Assert.Equal(50, window.WorstPosition.X.Millimeters, 1e-9);
        Assert.Equal(0.2, window.SlackSideShareAt(window.Lower.Result.Value), 1e-12);
        Assert.Equal(window.Lower.Result.SiValue, window.Recommended.SiValue, 1e-12);
        Assert.Equal(Span.FrequencyAt(window.Lower.Result).Result, window.LowerFrequency.Result);
        Assert.Equal(Span.FrequencyAt(window.Recommended).Result, window.RecommendedFrequency.Result);
    }

    // A maker's shaft load of 40 N, wrap π: the sum of both strands is 2·T0 ± F·(2·share − 1) ≤ 40; F = 6, share 0.961482: T0 ≤ 20 − 3·0.922964 = 17.231108 N.
    [Fact]
    public void Shaft_load_binds_when_stated_and_warns_when_not()
    {
        TensionWindow window = Window(Known with { ShaftLoad = Measured.Exact(Force.FromNewtons(40)) }, 10, 0.2);
        Assert.Equal(UpperTensionLimit.MotorShaft, window.BindingLimit);
        Assert.Equal(17.231108, window.Upper.Result.SiValue, 1e-5);
        TensionWindow fast = Window(Known, 30, 0.2);
        Assert.Equal(DriveFindings.ShaftLoadUnknown, Assert.Single(fast.Findings).Code);
        Assert.False(fast.IsEmpty);
    }

    // Idler of 30 N, wrap π: 2·(T0 + 0.961482·6) ≤ 30: T0 ≤ 9.231108 N.
    [Fact]
    public void Idler_binds()
    {
        TensionWindow window = Window(Known with { IdlerLoad = Measured.Exact(Force.FromNewtons(30)) }, 10, 0.2);
        Assert.Equal(UpperTensionLimit.Idler, window.BindingLimit);
        Assert.Equal(9.231108, window.Upper.Result.SiValue, 1e-5);
    }

    [Fact]
    public void Empty_window_names_both_limits()
    {
        TensionWindow window = Window(Known with { ShaftLoad = Measured.Exact(Force.FromNewtons(10)) }, 20, 0.2);
        Assert.True(window.IsEmpty);
        Finding finding = window.Findings.First(f => f.Code == DriveFindings.EmptyWindow);
        Assert.Equal(["lower", "upper"], finding.Numbers.Select(n => n.Name));
        Assert.False(window.TryGetRecommended(out _));
        Assert.Throws<IndeterminateException>(() => window.Judge(Measured.Exact(Force.FromNewtons(5))));
    }

    [Fact]
    public void Verdicts()
    {
        TensionWindow window = Window(Known, 10, 0.2);
        Force u = Force.FromNewtons(1);
        Assert.Equal(Conclusion.Within, window.Judge(Measured.Of(Force.FromNewtons(20), u)).Conclusion);
        Assert.Equal(Conclusion.Outside, window.Judge(Measured.Of(Force.FromNewtons(3), u)).Conclusion);
        Assert.Equal(Conclusion.Undecided, window.Judge(Measured.Of(Force.FromNewtons(7.2), u)).Conclusion);
        Assert.Equal(Conclusion.Within, window.Judge(Span.TensionFor(Measured.Of(Frequency.FromHertz(150), Frequency.FromHertz(1)))).Conclusion);
    }

    // The limit is uncertain where nothing is known of the masses, and its uncertainty must reach the verdict on an exact tension.
    [Fact]
    public void Unknown_masses_widen_the_window_and_the_verdict()
    {
        TensionWindow window = BeltDrive.Crossed(BeltPathTests.Crossed(300, 350, 40, 6, 6)).TensionWindow(Span, Options(10, null));
        Assert.True(window.Lower.Result.RelativeStandardUncertainty > 0.1);
        Assert.Equal(Conclusion.Undecided, window.Judge(Measured.Exact(window.Lower.Result.Value * 1.05)).Conclusion);
    }

    // By hand, two springs side by side: L1 = 0.3, L2 = 0.9 m, F = 6 N: +4.5/−1.5 N; the other way +1.5/−4.5 N: no slack needs 4.5 N. Drawn with a motor 0.3 m from the carriage's belt end and its
    // idler so that the strands are 0.3 and 0.9 m: centre distance d, carriage c, radius r: 2d + πr − c = 1.2 m.
    [Fact]
    public void Strands_share_by_stiffness()
    {
        double d = (1200 + 40 - (6 * Math.PI)) / 2;
        SingleAxisLayout layout = SingleAxisLayout.From(new SingleAxisDimensions
        {
            CentreDistance = Length.FromMillimeters(d),
            CarriageLength = Length.FromMillimeters(40),
            PulleyRadius = Length.FromMillimeters(6),
            Travel = HeadTravel.Along(Length.FromMillimeters(320), Length.FromMillimeters(321)),
        });
        BeltDriveOptions six = Known with { MassX = Measured.Exact(Mass.FromKilograms(0.5)), Friction = Measured.Exact(Force.FromNewtons(1)) };
        TensionWindow window = BeltDrive.SingleAxis(layout, six).TensionWindow(Span, Options(10, 0));
        Assert.Equal(4.5, window.Lower.Result.SiValue, 1e-9);
    }

    [Fact]
    public void More_acceleration_asks_for_more_tension_and_allows_less()
    {
        TensionWindow slow = Window(Known, 5, 0.2);
        TensionWindow fast = Window(Known, 10, 0.2);
        Assert.True(fast.Lower.Result.SiValue > slow.Lower.Result.SiValue && fast.Upper.Result.SiValue < slow.Upper.Result.SiValue);
        Assert.Throws<ArgumentOutOfRangeException>(() => Window(Known with { MassX = Measured.Exact(Mass.FromKilograms(-1)) }, 5, 0.2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Window(Known, -5, 0.2));
    }

    // κ = 0.003·2·5/6 + 0.002·2 = 0.009 (motor and idler, r = 6 mm, bore 5 mm, wrap π); q = 0.961482 + 0.2: T0 = 6·1.161482/(1 − 0.009·1.161482) = 7.042508 N;
    // belt: (60 − 6·0.961482)/(1 + 0.009·0.961482) = 53.765856 N. Idler of 30 N: 15 = T0 + 0.961482·(6 + 0.009·T0): T0 = 9.231108/1.008653 = 9.151916 N.
    [Fact]
    public void Friction_of_the_tension_itself_counts()
    {
        BeltDriveOptions dragging = Known with { BearingFriction = Measured.Exact(0.003), BendingLoss = Measured.Exact(0.002) };
        TensionWindow window = Window(dragging, 10, 0.2);
        Assert.Equal(7.042508, window.Lower.Result.SiValue, 5e-6);
        Assert.Equal(53.765856, window.Upper.Result.SiValue, 5e-5);
        Assert.Equal(0.2, window.SlackSideShareAt(window.Lower.Result.Value), 1e-12);
        Assert.Equal(9.151916, Window(dragging with { IdlerLoad = Measured.Exact(Force.FromNewtons(30)) }, 10, 0.2).Upper.Result.SiValue, 5e-5);
    }

    // Strength 3 N/mm · 6 mm = 18 N at 20 m/s², F = 11 N: lower 12.776 N, upper 18 − 11·0.961482 = 7.424 N, room −5.35 N: empty with u = 1 N, not decided with u = 6 N.
    [Theory]
    [InlineData(1, Conclusion.Outside, DriveFindings.EmptyWindow)]
    [InlineData(6, Conclusion.Undecided, DriveFindings.UndecidedWindow)]
    public void An_uncertain_limit_leaves_open_whether_the_window_is_empty(double u, Conclusion expected, string code)
    {
        TensionWindow window = Window(
            Known with { WorkingStrength = Measured.Of(ForcePerLength.FromNewtonsPerMillimeter(3), ForcePerLength.FromNewtonsPerMillimeter(u / 6)) }, 20, 0.2);
        Assert.Equal(expected, window.Opening.Conclusion);
        Assert.Equal(expected == Conclusion.Outside, window.IsEmpty);
        Assert.Contains(window.Findings, finding => finding.Code == code);
        Assert.Throws<IndeterminateException>(() => window.Recommended);
        Assert.Equal(code, Assert.Throws<IndeterminateException>(() => window.Judge(Measured.Exact(Force.FromNewtons(5)))).Finding?.Code);
    }

    [Fact]
    public void A_force_that_is_too_much_by_itself_is_a_finding()
    {
        TensionWindow window = Window(Known with { WorkingStrength = Measured.Exact(ForcePerLength.FromNewtonsPerMillimeter(1)) }, 50, 0.2);
        Assert.True(window.Upper.Result.SiValue < 0);
        Assert.Contains(window.Findings, finding => finding.Code == DriveFindings.Overloaded);
        Assert.False(window.TryGetUpperFrequency(out _));
        Assert.Equal(DriveFindings.Overloaded, Assert.Throws<IndeterminateException>(() => window.UpperFrequency).Finding?.Code);
        Assert.True(Window(Known, 10, 0.2).TryGetUpperFrequency(out UncertaintyBudget<Frequency>? frequency));
        Assert.Equal(Span.FrequencyAt(Measured.Exact(Force.FromNewtons(54.231108))).Result.SiValue, frequency.Result.SiValue, 1e-4);
    }

    // Two inputs with r = 1 and opposite sensitivities cancel: the judged tension is then exact, and only the exact limit's 0 remains.
    [Theory]
    [InlineData(-1, 1, 0)]
    [InlineData(1, 1, 2)]
    [InlineData(1, 0, 1.4142135623730951)]
    public void Correlations_of_a_budget_are_kept(double sign, double correlation, double expected)
    {
        Measured<Force> ten = Measured.Of(Force.FromNewtons(10), Force.FromNewtons(1));
        UncertaintyBudget<Force> budget = Propagation.FirstOrder<Force>(
            20, [BudgetInput.Of("one", ten), BudgetInput.Of("other", ten), BudgetInput.Of("third", Measured.Exact(1.0))], [1, sign, 1],
            [new InputCorrelation("one", "other", correlation)]);
        Assert.Equal(expected, Window(Known, 10, 0.2).Judge(budget).Measured.SiStandardUncertainty, 1e-9);
    }

    // Strength 3 ± 0.3 N/mm · 6 mm: upper limit 18 − 6·0.961482 = 12.23 ± 1.8 N, lower 6.97 ± 0.12 N. Between them both are within 5 u, and 1.5 u of the upper limit's
    // uncertainty above the lower one is not enough.
    [Fact]
    public void Both_limits_count_when_both_are_near()
    {
        TensionWindow window = Window(
            Known with
            {
                MassX = Measured.Of(Mass.FromKilograms(0.5), Mass.FromKilograms(0.01)),
                WorkingStrength = Measured.Of(ForcePerLength.FromNewtonsPerMillimeter(3), ForcePerLength.FromNewtonsPerMillimeter(0.3)),
            },
            10, 0.2);
        double u = window.Upper.Result.SiStandardUncertainty;
        Assert.True(u > 5 * window.Lower.Result.SiStandardUncertainty);
        Verdict<Force> verdict = window.Judge(Measured.Exact(Force.FromNewtons(window.Lower.Result.SiValue + (1.5 * u))));
        Assert.Equal(u, verdict.Measured.SiStandardUncertainty, 1e-9);
        Assert.Equal(Conclusion.Undecided, verdict.Conclusion);
    }

    [Fact]
    public void Hub_load_of_half_a_turn_is_twice_the_tension() =>
        Assert.Equal(100, HubLoad.Of(Force.FromNewtons(50), Force.FromNewtons(50), Angle.FromDegrees(180)).Newtons, 1e-12);

    private static TensionWindow Window(BeltDriveOptions options, double acceleration, double share) =>
        BeltDrive.SingleAxis(Axis, options).TensionWindow(Span, Options(acceleration, share));

    private static TensionWindowOptions Options(double acceleration, double? share) => new()
    {
        Acceleration = Acceleration.FromMetersPerSecondSquared(acceleration),
        SlackSideShare = share is { } s ? Measured.Exact(s) : null,
    };

    private static readonly SingleAxisLayout Axis = SingleAxisLayout.From(new SingleAxisDimensions
    {
        CentreDistance = Length.FromMillimeters(400),
        CarriageLength = Length.FromMillimeters(40),
        PulleyRadius = Length.FromMillimeters(6),
        Travel = HeadTravel.Along(Length.FromMillimeters(50), Length.FromMillimeters(350)),
    });
}
