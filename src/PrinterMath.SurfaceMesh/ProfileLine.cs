namespace PrinterMath.SurfaceMesh;

/// <summary>A straight line over a height model, by the distance from its start in metres.</summary>
internal sealed class ProfileLine
{
    /// <summary>Two crossings of cell borders this close, as a share of the line, are one.</summary>
    private const double Same = 1e-12;

    private readonly IHeightModel _model;
    private readonly SurfacePosition _from;
    private readonly SurfacePosition _to;

    internal ProfileLine(IHeightModel model, SurfacePosition from, SurfacePosition to)
    {
        _model = model;
        _from = from;
        _to = to;
        Length = double.Hypot(to.XMeters - from.XMeters, to.YMeters - from.YMeters);
        if (!(Length > 0 && double.IsFinite(Length)))
        {
            throw Guard.Refused(nameof(to), $"The move from {from} to {to} has no length that can be computed with; a height along it needs one.");
        }
    }

    internal double Length { get; }

    internal SurfacePosition Position(double distance) =>
        distance <= 0 ? _from
        : distance >= Length ? _to
        : SurfacePosition.FromMeters(Between(_from.XMeters, _to.XMeters, distance), Between(_from.YMeters, _to.YMeters, distance));

    internal double Height(double distance)
    {
        SurfacePosition place = Position(distance);
        return _model.EstimateAt(place.X, place.Y).Meters;
    }

    /// <summary>Stretches with one polynomial each: exact for models made of cells, else sampled until it predicts the height between the samples.</summary>
    internal List<ProfileStretch> Stretches(double tolerance, out bool exact)
    {
        var cells = _model as ICellwiseModel;
        exact = cells is not null;
        double[] borders = cells is null ? Borders([_model.Domain.LeftMeters, _model.Domain.RightMeters], [_model.Domain.FrontMeters, _model.Domain.RearMeters]) : Borders(cells.Columns.Nodes, cells.Rows.Nodes);
        List<ProfileStretch> stretches = [];
        for (int i = 0; i + 1 < borders.Length; i++)
        {
            if (cells is not null)
            {
                stretches.Add(new ProfileStretch(borders[i], borders[i + 1], Sampled(borders[i], borders[i + 1], BernsteinForm.DegreeFor(cells.LineDegree)), 0));
                continue;
            }

            new ProfileSampling(this, tolerance, stretches).Sample(borders[i], borders[i + 1]);
        }

        return stretches;
    }

    internal double[] Sampled(double from, double to, int degree)
    {
        Span<double> heights = stackalloc double[degree + 1];
        for (int k = 0; k <= degree; k++)
        {
            heights[k] = Height(k == degree ? to : from + ((to - from) * BernsteinForm.Place(k, degree)));
        }

        double[] coefficients = new double[degree + 1];
        BernsteinForm.FromSamples(heights, coefficients);
        return coefficients;
    }

    private double[] Borders(ReadOnlySpan<double> columns, ReadOnlySpan<double> rows)
    {
        List<double> shares = [];
        Cross(columns, _from.XMeters, _to.XMeters, shares);
        Cross(rows, _from.YMeters, _to.YMeters, shares);
        shares.Sort();
        List<double> borders = [0];
        double last = 0;
        foreach (double share in shares)
        {
            if (share - last > Same && 1 - share > Same)
            {
                borders.Add(share * Length);
                last = share;
            }
        }

        borders.Add(Length);
        return [.. borders];
    }

    private static void Cross(ReadOnlySpan<double> nodes, double from, double to, List<double> shares)
    {
        foreach (double node in nodes)
        {
            if ((node > from && node < to) || (node > to && node < from))
            {
                shares.Add((node - from) / (to - from));
            }
        }
    }

    /// <summary>Never beyond either end, which may lie on the border of a domain that refuses the outside.</summary>
    private double Between(double from, double to, double distance) =>
        Math.Clamp(from + ((to - from) * (distance / Length)), Math.Min(from, to), Math.Max(from, to));
}
