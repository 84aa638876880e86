namespace PrinterMath.Tension;

/// <summary>Planes T = T₀ + g_A·n_A + g_B·n_B through the tensions of both belts, least squares with equal weights.</summary>
/// <remarks>Source: normal equations of two centred columns, solved by Cramer's rule.</remarks>
internal sealed class TurnPlane
{
    private readonly double[] _a;
    private readonly double[] _b;
    private readonly double _aa;
    private readonly double _ab;
    private readonly double _bb;

    internal TurnPlane(double[] turnsA, double[] turnsB)
    {
        _a = Centred(turnsA);
        _b = Centred(turnsB);
        _aa = Dot(_a, _a);
        _ab = Dot(_a, _b);
        _bb = Dot(_b, _b);
    }

    /// <summary>|r| of the two columns: 1 when they tell nothing apart or one of them stands still.</summary>
    internal double Likeness => _aa > 0 && _bb > 0 ? Math.Min(1, Math.Abs(_ab) / Math.Sqrt(_aa * _bb)) : 1;

    internal GainMatrix Gains(double[] tensionsA, double[] tensionsB)
    {
        (double aa, double ab) = Slopes(tensionsA);
        (double ba, double bb) = Slopes(tensionsB);
        return new GainMatrix(aa, ab, ba, bb);
    }

    /// <summary>Largest departure of a tension from the plane, as a multiple of its uncertainty.</summary>
    internal double LargestResidual(double[] tensions, double[] uncertainties)
    {
        (double a, double b) = Slopes(tensions);
        double[] centred = Centred(tensions);
        return Enumerable.Range(0, tensions.Length).Max(i =>
        {
            double residual = Math.Abs(centred[i] - (a * _a[i]) - (b * _b[i]));
            return uncertainties[i] > 0 ? residual / uncertainties[i] : 0;
        });
    }

    private (double A, double B) Slopes(double[] tensions)
    {
        double a = Dot(_a, tensions);
        double b = Dot(_b, tensions);
        double determinant = (_aa * _bb) - (_ab * _ab);
        return (((_bb * a) - (_ab * b)) / determinant, ((_aa * b) - (_ab * a)) / determinant);
    }

    private static double[] Centred(double[] values)
    {
        double mean = values.Average();
        return [.. values.Select(value => value - mean)];
    }

    private static double Dot(double[] left, double[] right)
    {
        double sum = 0;
        for (int i = 0; i < left.Length; i++)
        {
            sum += left[i] * right[i];
        }

        return sum;
    }
}
