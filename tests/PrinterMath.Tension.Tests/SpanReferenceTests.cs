using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

[Trait("Evidence", "Published")]
public sealed class SpanReferenceTests
{
    private static readonly Length Quarter = Length.FromMeters(0.25);
    private static readonly LinearDensity Belt = LinearDensity.FromGramsPerMeter(8.4);

    // Korins, "Belt tension" worked examples, korins.com/m/cl/page25.htm, T = 4ML²F²: 624 N, 0.17 m, 0.11 kg/m sound at
    // √49072 = 221.5221 Hz. Tolerance: the page prints the radicand to five digits.
    [Fact]
    public void String_frequency_of_the_handbook_example() =>
        Assert.Equal(Math.Sqrt(49_072), IdealString.Frequency(Force.FromNewtons(624), Length.FromMeters(0.17), LinearDensity.FromKilogramsPerMeter(0.11)).Hertz, 2e-3);

    // Same page, first example: 220 Hz gives 4·0.11·0.17²·220² = 615.454 N by its own formula (the page prints 610 N, rounded wrong).
    [Fact]
    public void String_tension_of_the_handbook_example() =>
        Assert.Equal(615.454, IdealString.Tension(Frequency.FromHertz(220), Length.FromMeters(0.17), LinearDensity.FromKilogramsPerMeter(0.11)).Newtons, 5e-4);

    // Mersenne's law evaluated with SciPy 1.10.1; eight digits given.
    [Theory]
    [InlineData(150, 257.17225)]
    [InlineData(250, 154.30335)]
    [InlineData(300, 128.58612)]
    public void String_frequency_by_length(double millimeters, double hertz) =>
        Assert.Equal(hertz, IdealString.Frequency(Force.FromNewtons(50), Length.FromMillimeters(millimeters), Belt).Hertz, 6e-6);

    // Fletcher & Rossing 1998, pinned stiff string, and the roots of the exact clamped equation found with SciPy 1.10.1 (brentq);
    // f_n/f_0 to nine digits.
    [Theory]
    [InlineData(1e-5, 1, 1.00004935, 1.00641457)]
    [InlineData(1e-4, 1, 1.00049336, 1.02091451)]
    [InlineData(1e-4, 2, 2.00394395, 2.04486378)]
    [InlineData(1e-3, 1, 1.00492269, 1.07282635)]
    [InlineData(1e-3, 2, 2.03909629, 2.17711915)]
    [InlineData(1e-3, 3, 3.13040540, 3.34247513)]
    [InlineData(1e-2, 1, 1.04818703, 1.30485284)]
    public void Stiff_span_against_the_exact_roots(double epsilon, int n, double pinned, double clamped)
    {
        Force tension = Force.FromNewtons(50);
        FlexuralRigidity rigidity = FlexuralRigidity.FromNewtonSquareMeters(epsilon * 50 * 0.25 * 0.25);
        double f0 = IdealString.Frequency(tension, Quarter, Belt).Hertz;
        Assert.Equal(pinned, PinnedSpan.Frequency(tension, Quarter, Belt, rigidity, n).Hertz / f0, 1e-8);
        Assert.Equal(clamped, ClampedSpan.Frequency(tension, Quarter, Belt, rigidity, n).Hertz / f0, 1e-8);
    }

    // H. Fletcher 1964, J. Acoust. Soc. Am. 36, 203: f_n ≈ n·f0·√(1 + Bn²)·(1 + (2/π)√B + (4/π²)B), B = π²·EI/(T·L²).
    // For EI/(TL²) ≤ 1e-3 and n = 1 the series lies within 0.061 % of the exact root.
    [Theory]
    [InlineData(1e-6)]
    [InlineData(1e-5)]
    [InlineData(1e-4)]
    [InlineData(1e-3)]
    public void Clamped_span_against_fletchers_series(double epsilon)
    {
        double b = Math.PI * Math.PI * epsilon;
        double series = Math.Sqrt(1 + b) * (1 + (2 / Math.PI * Math.Sqrt(b)) + (4 / (Math.PI * Math.PI) * b));
        Force tension = Force.FromNewtons(50);
        FlexuralRigidity rigidity = FlexuralRigidity.FromNewtonSquareMeters(epsilon * 50 * 0.25 * 0.25);
        double exact = ClampedSpan.Frequency(tension, Quarter, Belt, rigidity).Hertz / IdealString.Frequency(tension, Quarter, Belt).Hertz;
        Assert.Equal(1, series / exact, 6.1e-4);
    }

    // P. M. Morse 1948, Vibration and Sound, 2nd ed., ch. III: f_n ≈ n·f0·(1 + 2√ε + (4 + n²π²/2)·ε), ε = EI/(T·L²). For ε ≤ 1e-3 and n = 1 it lies within 0.061 % of the
    // exact root. The next term of its expansion is of the order ε^1.5, 3e-5 at ε = 1e-3 times a factor of some tens.
    [Theory]
    [InlineData(1e-6)]
    [InlineData(1e-5)]
    [InlineData(1e-4)]
    [InlineData(1e-3)]
    public void Clamped_span_against_morses_series(double epsilon)
    {
        double series = 1 + (2 * Math.Sqrt(epsilon)) + ((4 + (Math.PI * Math.PI / 2)) * epsilon);
        Force tension = Force.FromNewtons(50);
        FlexuralRigidity rigidity = FlexuralRigidity.FromNewtonSquareMeters(epsilon * 50 * 0.25 * 0.25);
        double exact = ClampedSpan.Frequency(tension, Quarter, Belt, rigidity).Hertz / IdealString.Frequency(tension, Quarter, Belt).Hertz;
        Assert.Equal(1, series / exact, 6.1e-4);
    }

    // Beam eigenvalues β_nL of standard tables (Blevins 1979, Formulas for Natural Frequency and Mode Shape, table 8-1, from memory):
    // pinned nπ; clamped 4.73004074, 7.85320462, 10.9956078.
    [Theory]
    [InlineData(1, 4.73004074)]
    [InlineData(2, 7.85320462)]
    [InlineData(3, 10.9956078)]
    public void Without_tension_the_span_is_a_beam(int n, double beta)
    {
        FlexuralRigidity rigidity = FlexuralRigidity.FromNewtonSquareMeters(2e-5);
        double scale = 2 * Math.PI * 0.25 * 0.25 * Math.Sqrt(0.0084 / 2e-5);
        Assert.Equal(beta, Math.Sqrt(scale * ClampedSpan.Frequency(Force.Zero, Quarter, Belt, rigidity, n).Hertz), 6e-8);
        Assert.Equal(n * Math.PI, Math.Sqrt(scale * PinnedSpan.Frequency(Force.Zero, Quarter, Belt, rigidity, n).Hertz), 1e-12);
    }

    // (u_T/T)² = (u_µ/µ)² + (2u_L/L)² + (2u_f/f)²: 5 % in µ, 1 mm in 250 mm and 0.5 Hz in 110 Hz give 5.145 % (JCGM 100:2008, 5.1.6,
    // evaluated with NumPy; four digits given). 25.4100 N is Mersenne's law.
    [Fact]
    public void Budget_of_a_plucked_string()
    {
        var span = new BeltSpan(
            Measured.Of(Quarter, Length.FromMillimeters(1)),
            Measured.Of(Belt, Belt * 0.05),
            new BeltSpanOptions { Ends = SpanEnds.Pinned, Rigidity = Measured.Exact(default(FlexuralRigidity)) });
        UncertaintyBudget<Force> budget = span.TensionFor(Measured.Of(Frequency.FromHertz(110), Frequency.FromHertz(0.5))).Budget;
        Assert.Equal(25.4100, budget.Result.SiValue, 5e-5);
        Assert.Equal(0.05145, budget.Result.RelativeStandardUncertainty, 5e-6);
        Assert.Equal(SpanInputs.Density, budget.Largest.Input.Name);
    }
}
