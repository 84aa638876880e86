using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace WorkshopSimulator;

/// <summary>
/// A tensioned stiff belt between two ends that resist turning, as finite elements: the natural frequencies come from an
/// eigenproblem, not from any closed formula.
/// </summary>
/// <remarks>
/// Cubic Hermite beam elements with the consistent mass and the geometric stiffness of the tension; each element's matrices are
/// integrated by Gauss points from the shape functions. The mesh is finer at the ends, where the bending boundary layer of
/// sqrt(EI/T), under a millimetre, has to be resolved. A rotational spring of infinite stiffness is a clamped end, zero a pinned one.
/// </remarks>
/// <param name="LengthMetres">Free length.</param>
/// <param name="TensionNewtons">Axial tension.</param>
/// <param name="KilogramsPerMetre">Linear density.</param>
/// <param name="FlexuralRigidity">EI in N·m².</param>
/// <param name="LeftSpring">Rotational stiffness of the left end in N·m/rad; may be infinite.</param>
/// <param name="RightSpring">Rotational stiffness of the right end in N·m/rad; may be infinite.</param>
public sealed record StiffSpan(
    double LengthMetres,
    double TensionNewtons,
    double KilogramsPerMetre,
    double FlexuralRigidity,
    double LeftSpring,
    double RightSpring)
{
    private const double Grading = 0.97;

    private static readonly (double Place, double Weight)[] GaussPoints =
    [
        ((1 - Math.Sqrt((3.0 / 7) + (2.0 / 7 * Math.Sqrt(6.0 / 5)))) / 2, (18 - Math.Sqrt(30)) / 72),
        ((1 - Math.Sqrt((3.0 / 7) - (2.0 / 7 * Math.Sqrt(6.0 / 5)))) / 2, (18 + Math.Sqrt(30)) / 72),
        ((1 + Math.Sqrt((3.0 / 7) - (2.0 / 7 * Math.Sqrt(6.0 / 5)))) / 2, (18 + Math.Sqrt(30)) / 72),
        ((1 + Math.Sqrt((3.0 / 7) + (2.0 / 7 * Math.Sqrt(6.0 / 5)))) / 2, (18 - Math.Sqrt(30)) / 72),
    ];

    /// <summary>The lowest modes.</summary>
    /// <param name="count">How many.</param>
    /// <param name="elements">Elements along the span; with 48 the first mode is within a part in a million, the twelfth within one in ten thousand.</param>
    /// <returns>Modes by rising frequency.</returns>
    public IReadOnlyList<SpanMode> Modes(int count, int elements = 48)
    {
        double[] nodes = Mesh(elements);
        (Matrix<double> stiffness, Matrix<double> mass) = Assemble(nodes);
        int[] free = FreeDegrees(elements);
        Matrix<double> k = Select(stiffness, free);
        Matrix<double> inverse = Select(mass, free).Cholesky().Factor.Inverse();
        Matrix<double> standard = inverse * k * inverse.Transpose();
        Evd<double> eigen = ((standard + standard.Transpose()) / 2).Evd(Symmetricity.Symmetric);
        Matrix<double> shapes = inverse.Transpose() * eigen.EigenVectors;

        var modes = new SpanMode[count];
        for (int i = 0; i < count; i++)
        {
            double[] full = new double[2 * nodes.Length];
            for (int j = 0; j < free.Length; j++)
            {
                full[free[j]] = shapes[j, i];
            }

            modes[i] = new SpanMode(Math.Sqrt(eigen.EigenValues[i].Real) / (2 * Math.PI), nodes, full);
        }

        return modes;
    }

    private double[] Mesh(int elements)
    {
        double[] nodes = new double[elements + 1];
        for (int i = 0; i <= elements; i++)
        {
            double s = (double)i / elements;
            nodes[i] = LengthMetres * (s - (Grading * Math.Sin(2 * Math.PI * s) / (2 * Math.PI)));
        }

        return nodes;
    }

    private (Matrix<double> Stiffness, Matrix<double> Mass) Assemble(double[] nodes)
    {
        int size = 2 * nodes.Length;
        Matrix<double> stiffness = Matrix<double>.Build.Dense(size, size);
        Matrix<double> mass = Matrix<double>.Build.Dense(size, size);
        Span<double> value = stackalloc double[4];
        Span<double> slope = stackalloc double[4];
        Span<double> curvature = stackalloc double[4];
        for (int e = 0; e + 1 < nodes.Length; e++)
        {
            double h = nodes[e + 1] - nodes[e];
            foreach ((double place, double weight) in GaussPoints)
            {
                HermiteShape.At(place, h, value, slope, curvature);
                for (int i = 0; i < 4; i++)
                {
                    for (int j = 0; j < 4; j++)
                    {
                        stiffness[(2 * e) + i, (2 * e) + j] += h * weight
                            * ((FlexuralRigidity * curvature[i] * curvature[j]) + (TensionNewtons * slope[i] * slope[j]));
                        mass[(2 * e) + i, (2 * e) + j] += h * weight * KilogramsPerMetre * value[i] * value[j];
                    }
                }
            }
        }

        if (double.IsFinite(LeftSpring))
        {
            stiffness[1, 1] += LeftSpring;
        }

        if (double.IsFinite(RightSpring))
        {
            stiffness[size - 1, size - 1] += RightSpring;
        }

        return (stiffness, mass);
    }

    private int[] FreeDegrees(int elements)
    {
        var free = new List<int>();
        for (int i = 0; i < 2 * (elements + 1); i++)
        {
            bool held = i == 0
                || i == 2 * elements
                || (i == 1 && double.IsPositiveInfinity(LeftSpring))
                || (i == (2 * elements) + 1 && double.IsPositiveInfinity(RightSpring));
            if (!held)
            {
                free.Add(i);
            }
        }

        return [.. free];
    }

    private static Matrix<double> Select(Matrix<double> all, int[] kept) =>
        Matrix<double>.Build.Dense(kept.Length, kept.Length, (i, j) => all[kept[i], kept[j]]);
}
