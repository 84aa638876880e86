using System.Globalization;

namespace PrinterMath.SurfaceMesh;

/// <summary>The polynomial of each cell, computed once: z = Σᵣ Σₛ c[cell, r, s] tʳ sˢ.</summary>
internal static class CellPolynomials
{
    internal static double[] Of(TensorSurface surface, int degree)
    {
        AxisBasis x = surface.X, y = surface.Y;
        double[] heights = surface.Heights;
        int terms = degree + 1, next = 0;
        double[] coefficients = new double[x.Axis.Cells * y.Axis.Cells * terms * terms];
        for (int row = 0; row < y.Axis.Cells; row++)
        {
            for (int column = 0; column < x.Axis.Cells; column++)
            {
                for (int power = 0; power < terms * terms; power++)
                {
                    coefficients[next++] = Coefficient(x, column, power / terms, y, row, power % terms, heights);
                }
            }
        }

        return coefficients;
    }

    internal static void RequireSameLength(int xs, int ys, int zs)
    {
        if (xs != ys || xs != zs)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"xs, ys and zs must be of one length; they have {xs}, {ys} and {zs} entries."), nameof(zs));
        }
    }

    private static double Coefficient(AxisBasis x, int column, int powerX, AxisBasis y, int row, int powerY, double[] heights)
    {
        double sum = 0;
        for (int j = 0; j < AxisBasis.Width; j++)
        {
            double b = y.Power(row, powerY, j);
            for (int i = 0; b != 0 && i < AxisBasis.Width; i++)
            {
                double a = x.Power(column, powerX, i);
                sum += a == 0 ? 0 : a * b * heights[((y.First(row) + j) * x.Axis.Count) + x.First(column) + i];
            }
        }

        return sum;
    }
}
