namespace PrinterMath.SurfaceMesh.Tests;

public sealed class HeightAllocationTests
{
    private static readonly double[] Nodes = [0, 0.1, 0.2, 0.3];
    private static readonly ProbedGrid Grid = ProbedGrid.FromHeights(Nodes, Nodes, [.. Enumerable.Range(0, 16).Select(i => 1e-5 * i * i)]);
    private static readonly double[] Inside = [0, 0.05, 0.1, 0.17, 0.3];
    private static readonly double[] Outside = [-0.01, 0.05, 0.1, 0.17, 0.32];

    [Theory]
    [InlineData(false, OutsideRule.Refuse)]
    [InlineData(false, OutsideRule.Clamp)]
    [InlineData(true, OutsideRule.Refuse)]
    [InlineData(true, OutsideRule.Clamp)]
    public void Heights_of_many_places_allocate_nothing(bool cubic, OutsideRule rule)
    {
        var options = new HeightModelOptions { Outside = rule };
        IHeightModel model = cubic ? BicubicModel.Through(Grid, options) : BilinearModel.Through(Grid, options);
        double[] places = rule == OutsideRule.Refuse ? Inside : Outside, heights = new double[places.Length];
        Allocation.None(i =>
        {
            model.Heights(places, places, heights);
            return heights[i % heights.Length];
        });
    }
}
