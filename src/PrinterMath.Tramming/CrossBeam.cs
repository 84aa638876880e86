using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>A beam on which a carriage travels, and how far its weight bends it down: largest in the middle, none at the ends.</summary>
/// <remarks>
/// <para>Under a load m·g at the distance a from one end, b = L − a from the other: supported ends δ = m·g·a²b²/(3EI·L), in the middle m·g·L³/(48EI); clamped ends δ = m·g·a³b³/(3EI·L³), in the middle
/// m·g·L³/(192EI). g = 9.80665 m/s². The beam's own weight and loads that stay put bend it as well, but always the same way: they are part of its shape.</para>
/// <para>Effect on a map: a probe that rides on the carriage sinks with it, so a flat bed reads higher in the middle by the sag; the nozzle sinks as much, so a map made with the same mass on board
/// already holds the sag and needs no correction. A map made with another mass is off by the sag of the difference.</para>
/// <para>Source: Young, Budynas 2002, Roark's Formulas for Stress and Strain, 7th ed., table 8.1, cases 1d and 1e (from memory); Euler-Bernoulli beam, so only for beams ten times as long as
/// high. Not to be confused with <see cref="BedTwist"/>, which a bed has of itself.</para>
/// </remarks>
/// <example><code>Measured&lt;Length&gt; sag = CrossBeam.Of(length, rigidity, BeamEnds.Supported).MiddleSag(carriageMass);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class CrossBeam
{
    /// <summary>Standard acceleration of free fall in m/s², by definition (CGPM 1901).</summary>
    private const double Gravity = 9.80665;

    private CrossBeam(Measured<Length> length, Measured<FlexuralRigidity> rigidity, BeamEnds ends)
    {
        Length = length;
        Rigidity = rigidity;
        Ends = ends;
    }

    /// <summary>Free length L between the ends.</summary>
    public Measured<Length> Length { get; }

    /// <summary>Flexural rigidity E·I for bending in the vertical plane.</summary>
    public Measured<FlexuralRigidity> Rigidity { get; }

    /// <summary>How the ends are held.</summary>
    public BeamEnds Ends { get; }

    /// <summary>A beam.</summary>
    /// <param name="length">Free length between the ends, greater than zero.</param>
    /// <param name="rigidity">E·I for bending in the vertical plane, greater than zero.</param>
    /// <param name="ends">How the ends are held; when in doubt both, as limits.</param>
    /// <returns>The beam.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive, or the ends are not one of the named ways.</exception>
    /// <exception cref="InvalidOperationException">A number was never measured.</exception>
    public static CrossBeam Of(Measured<Length> length, Measured<FlexuralRigidity> rigidity, BeamEnds ends)
    {
        Guard.Positive(length.SiValue, nameof(length));
        Guard.Positive(rigidity.SiValue, nameof(rigidity));
        return Enum.IsDefined(ends) ? new CrossBeam(length, rigidity, ends) : throw Guard.Out(nameof(ends), ends, "Supported or Clamped");
    }

    /// <summary>Sag in the middle under a mass there: how much higher a flat bed reads in the middle than at the ends.</summary>
    /// <param name="mass">Mass of the carriage, zero or more.</param>
    /// <returns>The sag with its budget's result, positive downwards.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is negative.</exception>
    /// <exception cref="InvalidOperationException">The mass was never measured.</exception>
    public Measured<Length> MiddleSag(Measured<Mass> mass) => SagAt(0.5, mass);

    /// <summary>Sag under a mass at a place along the beam.</summary>
    /// <param name="shareOfLength">Place as a share of the length, a ratio from 0 to 1.</param>
    /// <param name="mass">Mass of the carriage, zero or more.</param>
    /// <returns>The sag under the carriage, positive downwards.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The place is out of range, or the mass is negative.</exception>
    /// <exception cref="InvalidOperationException">The mass was never measured.</exception>
    public Measured<Length> SagAt(double shareOfLength, Measured<Mass> mass)
    {
        double t = Guard.Between(shareOfLength, 0, 1);
        double m = Guard.NonNegative(mass.SiValue, nameof(mass));
        double product = t * (1 - t);
        double shape = Ends == BeamEnds.Supported ? product * product / 3 : product * product * product / 3;
        double perMass = shape * Gravity * Math.Pow(Length.SiValue, 3) / Rigidity.SiValue;
        double sag = m * perMass;
        return Propagation.FirstOrder<Length>(
            sag,
            [BudgetInput.Of("mass", mass), BudgetInput.Of("length", Length), BudgetInput.Of("rigidity", Rigidity)],
            [perMass, 3 * sag / Length.SiValue, -sag / Rigidity.SiValue]).Result;
    }

    /// <summary>What to add to heights of a map read with one mass on the carriage, so that they hold for printing with another: positive raises the map.</summary>
    /// <param name="shareOfLength">Place as a share of the length, a ratio from 0 to 1.</param>
    /// <param name="probing">Mass while probing.</param>
    /// <param name="printing">Mass while printing.</param>
    /// <returns>The correction, sag of the printing mass less that of the probing mass: a heavier carriage sinks more, so the bed stands higher to it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The place is out of range, or a mass is negative.</exception>
    /// <exception cref="InvalidOperationException">A mass was never measured.</exception>
    public Measured<Length> MapCorrection(double shareOfLength, Measured<Mass> probing, Measured<Mass> printing)
    {
        double less = Guard.NonNegative(probing.SiValue, nameof(probing));
        double more = Guard.NonNegative(printing.SiValue, nameof(printing));
        double perMass = SagAt(shareOfLength, Measured.Exact(Mass.FromKilograms(1))).SiValue;
        double change = (more - less) * perMass;
        return Propagation.FirstOrder<Length>(
            change,
            [BudgetInput.Of("mass while probing", probing), BudgetInput.Of("mass while printing", printing), BudgetInput.Of("length", Length), BudgetInput.Of("rigidity", Rigidity)],
            [-perMass, perMass, 3 * change / Length.SiValue, -change / Rigidity.SiValue]).Result;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Length, rigidity and ends.</returns>
    public override string ToString() => $"{Length} long, {Rigidity}, {(Ends == BeamEnds.Supported ? "supported" : "clamped")}";
}
