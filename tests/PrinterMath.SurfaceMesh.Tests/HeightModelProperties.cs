using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

/// <summary>A grid with uneven spacings and heights of the size of a print surface, and a place inside it.</summary>
public sealed record AnySurface(double[] Columns, double[] Rows, double[] Heights, double AcrossX, double AcrossY)
{
    public double X => Columns[0] + (AcrossX * (Columns[^1] - Columns[0]));

    public double Y => Rows[0] + (AcrossY * (Rows[^1] - Rows[0]));
}

public static class SurfaceArbitrary
{
    public static Arbitrary<AnySurface> Surfaces() => Arb.From(
        from columns in Axis()
        from rows in Axis()
        from heights in Gen.ArrayOf(Gen.Choose(-1000, 1000), columns.Length * rows.Length)
        from x in Gen.Choose(0, 10_000)
        from y in Gen.Choose(0, 10_000)
        select new AnySurface(columns, rows, [.. heights.Select(h => h * 1e-6)], x / 1e4, y / 1e4));

    private static Gen<double[]> Axis() =>
        from count in Gen.Choose(2, 7)
        from steps in Gen.ArrayOf(Gen.Choose(10, 90), count)
        select Enumerable.Range(0, count).Select(i => steps.Take(i + 1).Sum() / 1000.0).ToArray();
}

[Properties(Arbitrary = [typeof(SurfaceArbitrary)], MaxTest = 200)]
public sealed class HeightModelProperties
{
    /// <summary>Heights are up to 1 mm; weights sum to one with absolute values below 10 even on uneven grids.</summary>
    private const double Rounding = 1e-16;

    [Property]
    public bool Models_pass_through_the_nodes(AnySurface s) => Models(s, s.Heights).All(model =>
        Enumerable.Range(0, s.Heights.Length).All(k =>
            Near(s.Heights[k], At(model, s.Columns[k % s.Columns.Length], s.Rows[k / s.Columns.Length]))));

    [Property]
    public bool Bilinear_surfaces_are_reproduced_and_so_are_their_slopes(AnySurface s)
    {
        static double Height(double x, double y) => 1e-4 + (3e-3 * x) - (2e-3 * y) + (4e-2 * x * y);
        return Models(s, [.. from y in s.Rows from x in s.Columns select Height(x, y)]).All(model =>
        {
            SurfaceGradient slope = model.GradientAt(Length.FromMeters(s.X), Length.FromMeters(s.Y));

            // A slope divides a rounding of 1e-16 by a spacing of 0.01 m.
            return Near(Height(s.X, s.Y), At(model, s.X, s.Y))
                && Math.Abs(slope.AlongX - 3e-3 - (4e-2 * s.Y)) < 1e-13
                && Math.Abs(slope.AlongY + 2e-3 - (4e-2 * s.X)) < 1e-13;
        });
    }

    [Property]
    public bool Bicubic_reproduces_parabolas_on_three_nodes_and_more(AnySurface s)
    {
        static double Height(double x, double y) => (1e-2 * x * x) - (2e-2 * y * y) + (0.1 * x * x * y);
        return s.Columns.Length < 3 || s.Rows.Length < 3
            || Near(Height(s.X, s.Y), At(Models(s, [.. from y in s.Rows from x in s.Columns select Height(x, y)])[1], s.X, s.Y));
    }

    [Property]
    public bool Turning_the_surface_turns_the_heights(AnySurface s)
    {
        // A quarter turn: (x, y) goes to (−y, x).
        double[] columns = [.. s.Rows.AsEnumerable().Reverse().Select(y => -y)];
        double[] heights = [.. from i in Enumerable.Range(0, s.Columns.Length)
                               from j in Enumerable.Range(0, s.Rows.Length).Reverse()
                               select s.Heights[(j * s.Columns.Length) + i]];
        var turned = new AnySurface(columns, s.Columns, heights, 0, 0);
        return Models(s, s.Heights).Zip(Models(turned, heights)).All(pair => Near(At(pair.First, s.X, s.Y), At(pair.Second, -s.Y, s.X)));
    }

    [Property]
    public bool Order_of_points_does_not_matter(AnySurface s)
    {
        ProbePoint[] points = [.. s.Heights.Select((z, k) => ProbePoint.FromMeters(s.Columns[k % s.Columns.Length], s.Rows[k / s.Columns.Length], z))];
        ProbePoint[] shuffled = [.. points];
        new Random(1).Shuffle(shuffled);
        return At(BicubicModel.Through(ProbedGrid.FromPoints(points)), s.X, s.Y).Equals(At(BicubicModel.Through(ProbedGrid.FromPoints(shuffled)), s.X, s.Y));
    }

    [Property]
    public bool Heights_scale(AnySurface s) =>
        Models(s, s.Heights).Zip(Models(s, [.. s.Heights.Select(z => 1000 * z)])).All(pair =>
            Math.Abs((1000 * At(pair.First, s.X, s.Y)) - At(pair.Second, s.X, s.Y)) < 1000 * 1e-14);

    [Property]
    public bool Bulk_and_single_agree(AnySurface s) => Models(s, s.Heights).All(model =>
    {
        double[] z = new double[1];
        model.Heights([s.X], [s.Y], z);
        return Math.Abs(z[0] - At(model, s.X, s.Y)) < 1e-14;
    });

    [Property]
    public bool Bilinear_stays_between_its_nodes(AnySurface s) =>
        At(Models(s, s.Heights)[0], s.X, s.Y) is double z && z >= s.Heights.Min() - Rounding && z <= s.Heights.Max() + Rounding;

    [Property]
    public bool Shape_preserving_cells_stay_between_their_nodes(AnySurface s)
    {
        BicubicModel model = BicubicModel.Through(ProbedGrid.FromHeights(s.Columns, s.Rows, s.Heights), SlopeRule.ShapePreserving);
        int column = Cell(s.Columns, s.X), row = Cell(s.Rows, s.Y), node = (row * s.Columns.Length) + column;
        double[] corners = [s.Heights[node], s.Heights[node + 1], s.Heights[node + s.Columns.Length], s.Heights[node + s.Columns.Length + 1]];
        return At(model, s.X, s.Y) is double z && z >= corners.Min() - 1e-15 && z <= corners.Max() + 1e-15;

        static int Cell(double[] axis, double at) => Math.Min(axis.Count(node => node <= at) - 1, axis.Length - 2);
    }

    [Property]
    public bool Shape_preserving_lines_rise_where_the_nodes_rise(AnySurface s)
    {
        BicubicModel model = BicubicModel.Through(ProbedGrid.FromHeights(s.Columns, s.Rows, s.Heights), SlopeRule.ShapePreserving);
        return Enumerable.Range(0, s.Columns.Length - 1).All(i =>
        {
            double slope = model.GradientAt(Length.FromMeters(s.Columns[i] + (s.AcrossX * (s.Columns[i + 1] - s.Columns[i]))), Length.FromMeters(s.Rows[0])).AlongX;

            // 1e-3 m in 1e-2 m is a slope of 0.1, hence the rounding.
            return slope * Math.Sign(s.Heights[i + 1] - s.Heights[i]) >= -1e-15;
        });
    }

    [Property]
    public bool Natural_spline_has_continuous_curvature_and_none_at_the_border(AnySurface s)
    {
        BicubicModel model = BicubicModel.Through(ProbedGrid.FromHeights(s.Columns, s.Rows, s.Heights), SlopeRule.NaturalSpline);
        const double Step = 1e-7;
        return Enumerable.Range(0, s.Columns.Length).All(i =>
        {
            double below = i == 0 ? 0 : (Slope(s.Columns[i]) - Slope(s.Columns[i] - Step)) / Step;
            double above = i == s.Columns.Length - 1 ? 0 : (Slope(s.Columns[i] + Step) - Slope(s.Columns[i])) / Step;

            // Third derivative up to 1e-3/1e-2³ = 1e3 times the step, and more on uneven grids; rounding 1e-15/1e-7.
            return Math.Abs(above - below) < 2e-3;
        });

        double Slope(double x) => model.GradientAt(Length.FromMeters(x), Length.FromMeters(s.Y)).AlongX;
    }

    [Property]
    public bool Linear_extension_is_continuous_with_its_slope(AnySurface s)
    {
        var options = new HeightModelOptions { Outside = OutsideRule.ExtendLinearly };
        ProbedGrid grid = ProbedGrid.FromHeights(s.Columns, s.Rows, s.Heights);
        return Enum.GetValues<SlopeRule>().Select(rule => (IHeightModel)BicubicModel.Through(grid, rule, options)).Append(BilinearModel.Through(grid, options)).All(model =>
        {
            double right = s.Columns[^1];
            double slope = model.GradientAt(Length.FromMeters(right), Length.FromMeters(s.Y)).AlongX;
            return Math.Abs(At(model, right + 0.02, s.Y) - At(model, right, s.Y) - (0.02 * slope)) < 1e-14;
        });
    }

    private static IHeightModel[] Models(AnySurface s, double[] heights)
    {
        ProbedGrid grid = ProbedGrid.FromHeights(s.Columns, s.Rows, heights);
        return [BilinearModel.Through(grid), .. Enum.GetValues<SlopeRule>().Select(rule => BicubicModel.Through(grid, rule))];
    }

    private static double At(IHeightModel model, double x, double y) => model.EstimateAt(Length.FromMeters(x), Length.FromMeters(y)).Meters;

    private static bool Near(double expected, double actual) => Math.Abs(expected - actual) < 1e-14;
}
