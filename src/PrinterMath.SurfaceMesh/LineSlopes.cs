namespace PrinterMath.SurfaceMesh;

/// <summary>Slopes at the nodes of one grid line, from its heights.</summary>
internal static class LineSlopes
{
    internal delegate void Formula(GridAxis axis, ReadOnlySpan<double> heights, Span<double> slopes);

    internal static Formula Of(SlopeRule rule) => rule switch
    {
        SlopeRule.Neighbours => Parabolas,
        SlopeRule.ShapePreserving => Monotone,
        SlopeRule.Akima => Akima,
        SlopeRule.NaturalSpline => Natural,
        _ => throw Guard.Out(nameof(rule), rule, "one of the named rules"),
    };

    /// <summary>Of the parabola through the node and its neighbours; at the end of the axis through the last three nodes.</summary>
    internal static void Parabolas(GridAxis axis, ReadOnlySpan<double> heights, Span<double> slopes)
    {
        int last = axis.Count - 1;
        for (int i = 0; i <= last; i++)
        {
            int middle = Math.Clamp(i, 1, Math.Max(1, last - 1));
            double before = Secant(axis, heights, middle - 1);
            double after = last > 1 ? Secant(axis, heights, middle) : before;
            double bend = last > 1 ? (after - before) / (axis.Nodes[middle + 1] - axis.Nodes[middle - 1]) : 0;
            slopes[i] = before + (bend * ((2 * axis.Nodes[i]) - axis.Nodes[middle - 1] - axis.Nodes[middle]));
        }
    }

    /// <summary>
    /// Weighted harmonic mean of the secants where they have one sign, else zero; at the end the parabola's slope, limited to the sign and three times the size of the secant.
    /// </summary>
    internal static void Monotone(GridAxis axis, ReadOnlySpan<double> heights, Span<double> slopes)
    {
        int last = axis.Count - 1;
        for (int i = 1; i < last; i++)
        {
            double before = Secant(axis, heights, i - 1), after = Secant(axis, heights, i);
            double h0 = axis.Step(i - 1), h1 = axis.Step(i);
            double near = (2 * h1) + h0, far = h1 + (2 * h0);
            slopes[i] = before * after > 0 ? (near + far) / ((near / before) + (far / after)) : 0;
        }

        slopes[0] = last > 1 ? Border(axis.Step(0), axis.Step(1), Secant(axis, heights, 0), Secant(axis, heights, 1)) : Secant(axis, heights, 0);
        slopes[last] = last > 1
            ? Border(axis.Step(last - 1), axis.Step(last - 2), Secant(axis, heights, last - 1), Secant(axis, heights, last - 2))
            : slopes[0];
    }

    /// <summary>m = (|d₄ − d₃|d₂ + |d₂ − d₁|d₃)/(|d₄ − d₃| + |d₂ − d₁|) of the secants d₁ d₂ before and d₃ d₄ after the node; the mean of d₂ and d₃ when both weights vanish.</summary>
    internal static void Akima(GridAxis axis, ReadOnlySpan<double> heights, Span<double> slopes)
    {
        int cells = axis.Cells;
        Span<double> d = cells <= 252 ? stackalloc double[256] : new double[cells + 4];
        double largest = 0;
        for (int i = 0; i < cells; i++)
        {
            d[i + 2] = Secant(axis, heights, i);
            largest = Math.Max(largest, Math.Abs(d[i + 2]));
        }

        d[1] = cells > 1 ? (2 * d[2]) - d[3] : d[2];
        d[0] = (2 * d[1]) - d[2];
        d[cells + 2] = cells > 1 ? (2 * d[cells + 1]) - d[cells] : d[cells + 1];
        d[cells + 3] = (2 * d[cells + 2]) - d[cells + 1];
        for (int i = 0; i <= cells; i++)
        {
            double after = Math.Abs(d[i + 3] - d[i + 2]), before = Math.Abs(d[i + 1] - d[i]);
            slopes[i] = after + before > 1e-9 * largest ? ((after * d[i + 1]) + (before * d[i + 2])) / (after + before) : (d[i + 1] + d[i + 2]) / 2;
        }
    }

    /// <summary>Second derivatives continuous at the nodes and zero at the ends: a tridiagonal system in the slopes, solved by elimination.</summary>
    internal static void Natural(GridAxis axis, ReadOnlySpan<double> heights, Span<double> slopes)
    {
        int last = axis.Count - 1;
        Span<double> ratio = axis.Count <= 256 ? stackalloc double[256] : new double[axis.Count];
        ratio[0] = 0.5;
        slopes[0] = 1.5 * Secant(axis, heights, 0);
        for (int i = 1; i <= last; i++)
        {
            double lower = i < last ? axis.Step(i) : 1, upper = i < last ? axis.Step(i - 1) : 0;
            double right = i < last
                ? 3 * ((lower * Secant(axis, heights, i - 1)) + (upper * Secant(axis, heights, i)))
                : 3 * Secant(axis, heights, last - 1);
            double pivot = (2 * (lower + upper)) - (lower * ratio[i - 1]);
            ratio[i] = upper / pivot;
            slopes[i] = (right - (lower * slopes[i - 1])) / pivot;
        }

        for (int i = last - 1; i >= 0; i--)
        {
            slopes[i] -= ratio[i] * slopes[i + 1];
        }
    }

    private static double Secant(GridAxis axis, ReadOnlySpan<double> heights, int cell) => (heights[cell + 1] - heights[cell]) / axis.Step(cell);

    private static double Border(double own, double next, double secant, double beyond)
    {
        double slope = ((((2 * own) + next) * secant) - (own * beyond)) / (own + next);
        return slope * secant <= 0 ? 0
            : secant * beyond < 0 && Math.Abs(slope) > 3 * Math.Abs(secant) ? 3 * secant
            : slope;
    }
}
