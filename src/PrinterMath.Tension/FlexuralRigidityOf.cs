using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Flexural rigidity of a belt from a piece of it, a ruler and a table: how far it sags under its own weight.</summary>
/// <remarks>
/// <para>Let a strip of belt stick out level over a straight edge, held down on the table, and measure from the edge along the belt and from the level of the table down to its end:
/// 60 to 120 mm sag by a third to a half. Wait until it rests. A belt that was kept in a coil is curled: measure with either side up.</para>
/// <para>Any bend is allowed, the strip follows EI·ψ″ = −w·s·cos ψ exactly, w = µ·g; a small drop d of an overhang L is w·L⁴/(8·EI).</para>
/// Source: F. T. Peirce 1930, J. Textile Inst. 21, T377, whose bending length is (EI/w)^⅓ (from memory). Gravity: 9.780 to 9.832 m/s² from equator to pole at sea level, normal gravity
/// of the Geodetic Reference System 1980 (from memory).
/// </remarks>
/// <example><code>
/// UncertaintyBudget&lt;FlexuralRigidity&gt; rigidity = FlexuralRigidityOf.OverhangingStrip(
///     density,
///     Measured.Of(Length.FromMillimeters(100), Length.FromMillimeters(0.5)),
///     teethUp: Measured.Of(Length.FromMillimeters(46), Length.FromMillimeters(1)),
///     teethDown: Measured.Of(Length.FromMillimeters(41), Length.FromMillimeters(1)));
/// var span = new BeltSpan(length, density, new BeltSpanOptions { Rigidity = rigidity.Result });
/// </code></example>
public static class FlexuralRigidityOf
{
    private const double LeastDrop = 0.02;
    private const double MostDrop = 0.65;
    private const double MostCurl = 0.4;

    /// <summary>Past it a first-order budget no longer holds.</summary>
    private const double MostUncertain = 0.2;

    /// <summary>Largest relative error of EI that the curl leaves in the mean over the squared difference of both drops in overhangs: 0.3 to 1.8 by the exact curves.</summary>
    private const double LeftByCurl = 2;

    /// <summary>EI = w·L³/q(d/L) of a strip that was never curled.</summary>
    /// <param name="density">Linear density µ, greater than zero.</param>
    /// <param name="overhang">Length L of what sticks out, along the belt.</param>
    /// <param name="drop">How far the end hangs below the level of the table, 2 to 65 % of the overhang.</param>
    /// <returns>The rigidity with its budget.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range: a drop of less can hardly be read, of more hardly depends on the rigidity; or the drop is known worse than to 20 %.</exception>
    /// <exception cref="InvalidOperationException">An argument was never measured.</exception>
    public static UncertaintyBudget<FlexuralRigidity> OverhangingStrip(Measured<LinearDensity> density, Measured<Length> overhang, Measured<Length> drop)
    {
        Check(density, overhang, drop.SiValue, nameof(drop));
        CheckKnown(drop.SiStandardUncertainty, drop.SiValue, nameof(drop));
        return Propagation.FirstOrder<FlexuralRigidity>(
            x => Rigidity(x[0], x[1], x[2], x[3]),
            [.. Strip(density, overhang), BudgetInput.Of("drop", drop)]);
    }

    /// <summary>EI of a curled strip from the drops with either side up, whose mean is free of the curl to first order.</summary>
    /// <param name="density">Linear density µ, greater than zero.</param>
    /// <param name="overhang">Length L of what sticks out, along the belt, the same both times.</param>
    /// <param name="teethUp">Drop of the end with the teeth up; negative when it curls up.</param>
    /// <param name="teethDown">Drop of the end with the teeth down.</param>
    /// <returns>The rigidity with its budget; what the curl leaves to second order, at most 2·((d₁ − d₂)/L)² of EI, stands in it as a rectangular distribution.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range, the mean drop not 2 to 65 % of the overhang, or the drops differ by more than 40 % of it: straighten the belt first.</exception>
    /// <exception cref="InvalidOperationException">An argument was never measured.</exception>
    public static UncertaintyBudget<FlexuralRigidity> OverhangingStrip(
        Measured<LinearDensity> density, Measured<Length> overhang, Measured<Length> teethUp, Measured<Length> teethDown)
    {
        double mean = (teethUp.SiValue + teethDown.SiValue) / 2;
        Check(density, overhang, mean, nameof(teethUp));
        CheckKnown(teethUp.SiStandardUncertainty, mean, nameof(teethUp));
        CheckKnown(teethDown.SiStandardUncertainty, mean, nameof(teethDown));
        double curl = (teethUp.SiValue - teethDown.SiValue) / overhang.SiValue;
        Guard.Between(curl, -MostCurl, MostCurl, nameof(teethDown));
        double left = LeftByCurl * curl * curl;
        Measured<double> second = left > 0 ? Measured.FromRange(-left, left) : Measured.Exact(0.0);
        return Propagation.FirstOrder<FlexuralRigidity>(
            x => Rigidity(x[0], x[1], x[2], (x[3] + x[4]) / 2) * (1 + x[5]),
            [
                .. Strip(density, overhang),
                BudgetInput.Of("drop, teeth up", teethUp),
                BudgetInput.Of("drop, teeth down", teethDown),
                BudgetInput.Of("curl left in the mean", second),
            ]);
    }

    private static double Rigidity(double density, double gravity, double overhang, double drop) =>
        density * gravity * overhang * overhang * overhang / HeavyStrip.Load(drop / overhang);

    private static BudgetInput[] Strip(Measured<LinearDensity> density, Measured<Length> overhang) =>
    [
        BudgetInput.Of("linear density", density),
        BudgetInput.Of("gravity", Measured.FromRange(Acceleration.FromMetersPerSecondSquared(9.780), Acceleration.FromMetersPerSecondSquared(9.832))),
        BudgetInput.Of("overhang", overhang),
    ];

    private static void Check(Measured<LinearDensity> density, Measured<Length> overhang, double drop, string name)
    {
        Guard.Positive(density.SiValue, nameof(density));
        double length = Guard.Positive(overhang.SiValue, nameof(overhang));
        if (!(drop >= LeastDrop * length && drop <= MostDrop * length))
        {
            throw Guard.Out(name, drop, string.Create(CultureInfo.InvariantCulture, $"2 to 65 % of the overhang of {length} m (on average, when both sides are given), in meters; change the overhang"));
        }
    }

    private static void CheckKnown(double uncertainty, double drop, string name)
    {
        if (!(uncertainty <= MostUncertain * drop))
        {
            throw Guard.Out(name, uncertainty, string.Create(CultureInfo.InvariantCulture, $"known to {MostUncertain * 100:0} % of the drop of {drop} m, standard uncertainty in meters; let more of the belt stick out"));
        }
    }
}
