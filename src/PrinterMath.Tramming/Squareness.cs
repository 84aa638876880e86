using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>
/// How far two axes are from square: 90° less the angle between +x and +y, positive when the angle is acute, so that the y axis leans towards +x as y grows.
/// </summary>
/// <remarks>
/// <para>Any two axes may stand for x and y. A printed square shows the machine's error unless the plastic warped; measure it where it was printed, cold, on the same face.</para>
/// <para>Source: ISO 230-1:2012, squareness error of two axes, the angular deviation of their reference lines from 90° (from memory).</para>
/// </remarks>
/// <example><code>
/// Squareness xy = Squareness.FromDiagonals(sideX, sideY, alongBoth, across);
/// AxisShear shear = xy.Shear;
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Squareness
{
    private Squareness(UncertaintyBudget<Angle> budget)
    {
        Budget = budget;
    }

    /// <summary>The deviation from 90°, positive when the angle between +x and +y is acute.</summary>
    public Measured<Angle> Deviation => Budget.Result;

    /// <summary>The deviation with what its uncertainty comes from.</summary>
    public UncertaintyBudget<Angle> Budget { get; }

    /// <summary>The correction of coordinates that undoes the deviation.</summary>
    public AxisShear Shear => AxisShear.For(Deviation.Value);

    /// <summary>From a printed or driven parallelogram, measured over sides and diagonals: sin ε = (d₁² − d₂²)/(4ab).</summary>
    /// <param name="sideX">Side a along x.</param>
    /// <param name="sideY">Side b along y.</param>
    /// <param name="diagonalAlongBoth">Diagonal d₁ from the corner of least x and y to that of greatest x and y: the longer one when ε is positive.</param>
    /// <param name="diagonalAcross">Diagonal d₂ between the other two corners.</param>
    /// <returns>The squareness; what one instrument reads too long everywhere cancels, so the uncertainties need not hold its common scale error.</returns>
    /// <remarks>u(ε) = √((2d₁u(d₁))² + (2d₂u(d₂))²)/(4ab) near square, the sides adding next to nothing. Source: law of cosines; JCGM 100:2008, 5.1.2.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A length is not positive, or the diagonals do not fit the sides.</exception>
    /// <exception cref="InvalidOperationException">A length was never measured.</exception>
    public static Squareness FromDiagonals(
        Measured<Length> sideX, Measured<Length> sideY, Measured<Length> diagonalAlongBoth, Measured<Length> diagonalAcross)
    {
        double a = Guard.Positive(sideX.SiValue, nameof(sideX));
        double b = Guard.Positive(sideY.SiValue, nameof(sideY));
        double first = Guard.Positive(diagonalAlongBoth.SiValue, nameof(diagonalAlongBoth));
        double second = Guard.Positive(diagonalAcross.SiValue, nameof(diagonalAcross));
        CheckClosure(first, second, (a * a) + (b * b), nameof(diagonalAcross));
        double sine = ((first * first) - (second * second)) / (4 * a * b);
        double cosine = Cosine(sine, nameof(diagonalAlongBoth));
        double scale = 1 / (4 * a * b * cosine);
        return new Squareness(Propagation.FirstOrder<Angle>(
            Math.Asin(sine),
            [
                BudgetInput.Of("side along x", sideX), BudgetInput.Of("side along y", sideY),
                BudgetInput.Of("diagonal along both", diagonalAlongBoth), BudgetInput.Of("diagonal across", diagonalAcross),
            ],
            [-sine / (a * cosine), -sine / (b * cosine), 2 * first * scale, -2 * second * scale]));
    }

    /// <summary>From the two diagonals alone, of a figure whose sides are alike: sin ε = (d₁² − d₂²)/(d₁² + d₂²).</summary>
    /// <param name="diagonalAlongBoth">Diagonal d₁ from the corner of least x and y to that of greatest x and y.</param>
    /// <param name="diagonalAcross">Diagonal d₂ between the other two corners.</param>
    /// <returns>The squareness; sides that differ by the fraction δ change it by δ²/2 of itself.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A length is not positive, or the figure is not within 30° of square.</exception>
    /// <exception cref="InvalidOperationException">A length was never measured.</exception>
    public static Squareness FromDiagonals(Measured<Length> diagonalAlongBoth, Measured<Length> diagonalAcross)
    {
        double first = Guard.Positive(diagonalAlongBoth.SiValue, nameof(diagonalAlongBoth));
        double second = Guard.Positive(diagonalAcross.SiValue, nameof(diagonalAcross));
        double sum = (first * first) + (second * second);
        double sine = ((first * first) - (second * second)) / sum;
        Cosine(sine, nameof(diagonalAcross));

        // tan(45° + ε/2) = d₁/d₂ of a rhombus, so dε = 2(d₂·dd₁ − d₁·dd₂)/(d₁² + d₂²)
        return new Squareness(Propagation.FirstOrder<Angle>(
            Math.Asin(sine),
            [BudgetInput.Of("diagonal along both", diagonalAlongBoth), BudgetInput.Of("diagonal across", diagonalAcross)],
            [2 * second / sum, -2 * first / sum]));
    }

    /// <summary>From a machinist's square set along x, its other leg followed along y by an indicator that moves with the carriage.</summary>
    /// <param name="towardsMinusX">
    /// How much farther towards −x the leg stands, seen from the carriage, after the travel: positive when the carriage has come to lean towards +x. An indicator that reads along x gives
    /// minus its change.
    /// </param>
    /// <param name="travel">Travel along y between the two readings, greater than zero.</param>
    /// <param name="squareDeviation">Deviation from 90° of the square itself, positive when its angle is acute; from its certificate, or exactly zero.</param>
    /// <returns>The squareness: ε = atan(shift/travel) + the square's own.</returns>
    /// <remarks>Turning the square over and taking the mean removes its own deviation. Source: ISO 230-1:2012, squareness with a reference square and an indicator (from memory).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The travel is not positive, or the axes are not within 30° of square.</exception>
    /// <exception cref="InvalidOperationException">A number was never measured.</exception>
    public static Squareness FromSquare(Measured<Length> towardsMinusX, Measured<Length> travel, Measured<Angle> squareDeviation)
    {
        double shift = Guard.Finite(towardsMinusX.SiValue, nameof(towardsMinusX));
        double along = Guard.Positive(travel.SiValue, nameof(travel));
        double square = (shift * shift) + (along * along);
        Cosine(shift / Math.Sqrt(square), nameof(towardsMinusX));
        return new Squareness(Propagation.FirstOrder<Angle>(
            Math.Atan(shift / along) + squareDeviation.SiValue,
            [BudgetInput.Of("shift of the leg", towardsMinusX), BudgetInput.Of("travel", travel), BudgetInput.Of("square", squareDeviation)],
            [along / square, -shift / square, 1]));
    }

    /// <summary>Judges the deviation against a tolerance at a specific risk of 5 %.</summary>
    /// <param name="tolerance">The limits, for instance ±0.05°.</param>
    /// <returns>The verdict.</returns>
    public Verdict<Angle> Judge(Tolerance<Angle> tolerance) => Guard.NotNull(tolerance).Judge(Budget);

    /// <summary>Invariant text.</summary>
    /// <returns>The deviation.</returns>
    public override string ToString() => $"{Deviation} from square";

    /// <summary>Half the squares of the diagonals of a parallelogram are the squares of its sides; more than a fifth beside that is a slip of the pen.</summary>
    private static void CheckClosure(double first, double second, double sides, string name)
    {
        double ratio = ((first * first) + (second * second)) / (2 * sides);
        if (ratio is < 0.8 or > 1.25)
        {
            throw Guard.Out(name, second, FormattableString.Invariant($"such that both diagonals fit the sides: the mean of their squares is {ratio:G3} times the sum of the squares of the sides"));
        }
    }

    private static double Cosine(double sine, string name) =>
        Math.Abs(sine) < 0.5 ? Math.Sqrt(1 - (sine * sine)) : throw Guard.Out(name, sine, "such that the figure is within 30° of square");
}
