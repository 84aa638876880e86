namespace PrinterMath.SurfaceMesh.Tests;

public sealed class HeightAllocationTests
{
    private static readonly double[] Nodes = [0, 0.1, 0.2, 0.3];
    private static readonly ProbedGrid Grid = ProbedGrid.FromHeights(Nodes, Nodes, [.. Enumerable.Range(0, 16).Select(i => 1e-5 * i * i)]);
    private static readonly double[] Inside = [0, 0.05, 0.1, 0.17, 0.3];
    private static readonly double[] Outside = [-0.01, 0.05, 0.1, 0.17, 0.32];

    public static TheoryData<string, OutsideRule> Models()
    {
        var cases = new TheoryData<string, OutsideRule>();
        foreach (string kind in Enum.GetNames<SlopeRule>().Append("Bilinear"))
        {
            cases.Add(kind, OutsideRule.Refuse);
            cases.Add(kind, OutsideRule.Clamp);
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Models))]
    public void Heights_of_many_places_allocate_nothing(string kind, OutsideRule rule)
    {
        var options = new HeightModelOptions { Outside = rule };
        IHeightModel model = kind == "Bilinear" ? BilinearModel.Through(Grid, options) : BicubicModel.Through(Grid, Enum.Parse<SlopeRule>(kind), options);
        double[] places = rule == OutsideRule.Refuse ? Inside : Outside, heights = new double[places.Length];
        Allocation.None(i =>
        {
            model.Heights(places, places, heights);
            return heights[i % heights.Length];
        });
    }
}
