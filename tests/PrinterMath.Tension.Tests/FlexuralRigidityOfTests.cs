using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class FlexuralRigidityOfTests
{
    private const double Gravity = 9.806;
    private static readonly Measured<LinearDensity> Density = Measured.Of(LinearDensity.FromGramsPerMeter(8.4), LinearDensity.FromGramsPerMeter(0.05));
    private static readonly Measured<Length> Overhang = Measured.Of(Length.FromMillimeters(100), Length.FromMillimeters(0.5));

    // The boundary value problem ψ″ = −q·(1 − s)·cos ψ, ψ(0) = 0, ψ′(1) = 0 solved with scipy.integrate.solve_bvp 1.10.1 (tol = 1e-11): drop of the free end over the overhang. Tolerance: what that
    // solver leaves.
    [Theory]
    [Trait("Evidence", "Published")]
    [InlineData(1, 0.12347140198335112)]
    [InlineData(2, 0.23850658287286738)]
    [InlineData(4, 0.4251592842016704)]
    [InlineData(8, 0.6406307174218925)]
    public void Load_of_a_heavy_strip(double load, double drop) => Assert.Equal(1, Load(drop) / load, 2e-9);

    // The stiffness test of textiles (F. T. Peirce 1930; ASTM D1388; from memory) lets a strip out until the line to its end falls by 41.5° and takes the bending length
    // (EI/w)^⅓ as half the overhang: w·L³/EI = 8. The end of that strip lies 0.7244247341381391 of its length away from the edge (solver as above).
    [Fact]
    [Trait("Evidence", "Published")]
    public void Bending_length_is_half_the_overhang_at_41_and_a_half_degrees()
    {
        double drop = 0.7244247341381391 * Math.Tan(41.5 * Math.PI / 180);
        Assert.Equal(8, Load(drop), 0.01);
    }

    // Textbook cantilever under its own weight, d = w·L⁴/(8·EI), S. Timoshenko 1955, Strength of Materials, part I (from memory). Tolerance: the next term is about 0.8·(d/L)².
    [Fact]
    [Trait("Evidence", "Published")]
    public void A_small_drop_is_the_textbook_cantilevers() => Assert.Equal(1, Load(0.02) / 0.16, 4e-4);

    [Fact]
    public void A_rigidity_by_hand()
    {
        // w·L³/EI = 4 where the drop is 42.51592842016704 mm of 100 mm: EI = 0.0084·9.806·0.001/4.
        UncertaintyBudget<FlexuralRigidity> rigidity = FlexuralRigidityOf.OverhangingStrip(
            Density, Overhang, Measured.Of(Length.FromMillimeters(42.51592842016704), Length.FromMillimeters(1)));
        Assert.Equal(0.0084 * Gravity * 1e-3 / 4, rigidity.Result.SiValue, 1e-13);
        Assert.Equal(4, rigidity.Lines.Count);
    }

    // Drops of strips with a curl of c radians over the overhang, ψ′(1) = ±c, by scipy.integrate.solve_bvp 1.10.1.
    [Theory]
    [InlineData(2, 0.28275065872251637, 0.1928657860963807)]
    [InlineData(2, 0.36650594909652606, 0.09802594777935499)]
    [InlineData(4, 0.45924582873583736, 0.3893332338098325)]
    [InlineData(4, 0.5220935817334137, 0.31260786964918713)]
    [InlineData(4, 0.5777154199892555, 0.22943955844364275)]
    [InlineData(8, 0.6593382902903222, 0.6206478031598621)]
    [InlineData(8, 0.6929741893632327, 0.5768077428510942)]
    [InlineData(8, 0.7216473379943746, 0.527718597312166)]
    public void A_curl_leaves_no_more_than_stated(double load, double up, double down)
    {
        UncertaintyBudget<FlexuralRigidity> rigidity = FlexuralRigidityOf.OverhangingStrip(
            Density, Overhang, Exactly(up), Exactly(down));
        double truth = 0.0084 * Gravity * 1e-3 / load;
        double curl = up - down;
        Assert.InRange(Math.Abs(rigidity.Result.SiValue - truth) / truth, 0, 2 * curl * curl);
        Assert.Equal(
            rigidity.Result.SiValue,
            FlexuralRigidityOf.OverhangingStrip(Density, Overhang, Exactly(down), Exactly(up)).Result.SiValue,
            1e-18);
    }

    [Fact]
    public void A_flat_strip_measured_twice_is_the_strip_measured_once()
    {
        Measured<Length> drop = Exactly(0.4);
        Assert.Equal(
            FlexuralRigidityOf.OverhangingStrip(Density, Overhang, drop).Result.SiValue,
            FlexuralRigidityOf.OverhangingStrip(Density, Overhang, drop, drop).Result.SiValue,
            1e-17);
    }

    // u²(EI)/EI² = (0.05/8.4)² + 0.00153² + (3·0.005)² + ((dln q/dln r)² ·(1/42.5)² and the overhang's share of r), by differences of the solver's values above.
    [Fact]
    public void The_drop_limits_what_is_known()
    {
        UncertaintyBudget<FlexuralRigidity> rigidity = FlexuralRigidityOf.OverhangingStrip(
            Density, Overhang, Measured.Of(Length.FromMillimeters(42.5), Length.FromMillimeters(1)));
        double slope = Math.Log(Load(0.4251) / Load(0.4249)) / Math.Log(0.4251 / 0.4249);
        double u = Math.Sqrt(Math.Pow(0.05 / 8.4, 2) + Math.Pow(0.026 / Math.Sqrt(3) / 9.806, 2) + Math.Pow((3 + slope) * 0.005, 2) + Math.Pow(slope / 42.5, 2));
        Assert.Equal(u, rigidity.Result.SiStandardUncertainty / rigidity.Result.SiValue, 1e-5);
        Assert.Equal("drop", rigidity.Largest.Input.Name);
    }

    [Theory]
    [InlineData(100, 1)]
    [InlineData(100, 66)]
    [InlineData(100, -5)]
    [InlineData(0.1, 40)]
    public void A_drop_that_says_little_is_refused(double overhang, double drop) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FlexuralRigidityOf.OverhangingStrip(
            Density, Measured.Exact(Length.FromMillimeters(overhang)), Measured.Exact(Length.FromMillimeters(drop))));

    [Fact]
    public void A_strong_curl_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FlexuralRigidityOf.OverhangingStrip(Density, Overhang, Exactly(0.6), Exactly(0.1)));

    [Fact]
    public void A_drop_hardly_known_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FlexuralRigidityOf.OverhangingStrip(
            Density, Overhang, Measured.Of(Length.FromMillimeters(10), Length.FromMillimeters(5))));

    private static Measured<Length> Exactly(double ratio) => Measured.Exact(Length.FromMillimeters(100 * ratio));

    /// <summary>w·L³/EI, read from the rigidity of a strip of which everything else is known.</summary>
    private static double Load(double drop) => 0.0084 * Gravity * 1e-3
        / FlexuralRigidityOf.OverhangingStrip(Density, Overhang, Exactly(drop)).Result.SiValue;
}
