using MathNet.Numerics.LinearAlgebra;

namespace PrinterMath.SurfaceMesh;

/// <summary>Bridges the nodes that were not probed by the surface of least bending through those that were. Planes are kept exactly.</summary>
/// <remarks>
/// A bridged height is Σ cₖ zₖ over the probed nodes. Its own error is judged by bridging each probed node from all others: s is the root mean square
/// of what that misses, and a hole d grid steps from the nearest probed node is taken to be off by s·d² (curvature goes with the square; common practice, no source).
/// Source: I. C. Briggs 1974, Machine contouring using minimum curvature, Geophysics 39, 39-48 (from memory).
/// </remarks>
internal sealed class GridBridge
{
    private readonly int[] _rankOf;
    private readonly Matrix<double> _weights;
    private readonly double[] _errors;

    private GridBridge(int[] probed, int[] rankOf, Matrix<double> weights, double[] heights, double[] errors)
    {
        Probed = probed;
        _rankOf = rankOf;
        _weights = weights;
        Heights = heights;
        _errors = errors;
    }

    /// <summary>Indices of the probed nodes.</summary>
    internal int[] Probed { get; }

    /// <summary>Heights of all nodes, bridged where needed.</summary>
    internal double[] Heights { get; }

    internal double LargestError => _errors.Max();

    internal int Count => _errors.Length;

    /// <summary>Adds a multiple of a node's height, as a combination of probed heights; returns how far the bridge itself may be off.</summary>
    internal double Add(int node, double factor, double[] toProbed)
    {
        int rank = _rankOf[node];
        if (rank >= 0)
        {
            toProbed[rank] += factor;
            return 0;
        }

        for (int k = 0; k < toProbed.Length; k++)
        {
            toProbed[k] += factor * _weights[-rank - 1, k];
        }

        return factor * _errors[-rank - 1];
    }

    internal static GridBridge Across(GridNodes nodes)
    {
        int[] probed = [.. Enumerable.Range(0, nodes.Readings.Length).Where(i => nodes.Readings[i] > 0)];
        int[] holes = [.. Enumerable.Range(0, nodes.Readings.Length).Where(i => nodes.Readings[i] == 0)];
        int[] rankOf = new int[nodes.Readings.Length];
        for (int k = 0; k < probed.Length; k++)
        {
            rankOf[probed[k]] = k;
        }

        for (int h = 0; h < holes.Length; h++)
        {
            rankOf[holes[h]] = -h - 1;
        }

        BendingEnergy.Term[] terms = [.. BendingEnergy.Terms(nodes.X, nodes.Y)];
        Matrix<double> weights = Weights(terms, rankOf, holes.Length, probed.Length);
        double[] heights = Fill(nodes.Heights, probed, holes, weights);
        double typical = LeaveOneOut(terms, heights, rankOf);
        double[] errors = [.. holes.Select(i => typical * Math.Pow(StepsToProbed(nodes, i), 2))];
        return new GridBridge(probed, rankOf, weights, heights, errors);
    }

    /// <summary>The energy is least where its derivative by each hole is zero: H·zₕ = −G·z_probed.</summary>
    private static Matrix<double> Weights(BendingEnergy.Term[] terms, int[] rankOf, int holes, int probed)
    {
        Matrix<double> normal = Matrix<double>.Build.Dense(holes, holes);
        Matrix<double> right = Matrix<double>.Build.Dense(holes, probed);
        foreach (BendingEnergy.Term term in terms)
        {
            for (int a = 0; a < term.Nodes.Length; a++)
            {
                int hole = -rankOf[term.Nodes[a]] - 1;
                for (int b = 0; hole >= 0 && b < term.Nodes.Length; b++)
                {
                    double product = term.Weight * term.Coefficients[a] * term.Coefficients[b];
                    int rank = rankOf[term.Nodes[b]];
                    if (rank >= 0)
                    {
                        right[hole, rank] -= product;
                    }
                    else
                    {
                        normal[hole, -rank - 1] += product;
                    }
                }
            }
        }

        return normal.Cholesky().Solve(right);
    }

    private static double[] Fill(double[] known, int[] probed, int[] holes, Matrix<double> weights)
    {
        double[] heights = [.. known];
        double origin = known[probed[0]];
        for (int h = 0; h < holes.Length; h++)
        {
            double rise = 0;
            for (int k = 0; k < probed.Length; k++)
            {
                rise += weights[h, k] * (known[probed[k]] - origin);
            }

            heights[holes[h]] = origin + rise;
        }

        return heights;
    }

    private static double LeaveOneOut(BendingEnergy.Term[] terms, double[] heights, int[] rankOf)
    {
        double[] slope = new double[heights.Length];
        double[] curvature = new double[heights.Length];
        foreach (BendingEnergy.Term term in terms)
        {
            double bend = 0, origin = heights[term.Nodes[0]];
            for (int a = 0; a < term.Nodes.Length; a++)
            {
                bend += term.Coefficients[a] * (heights[term.Nodes[a]] - origin);
            }

            for (int a = 0; a < term.Nodes.Length; a++)
            {
                slope[term.Nodes[a]] += term.Weight * term.Coefficients[a] * bend;
                curvature[term.Nodes[a]] += term.Weight * term.Coefficients[a] * term.Coefficients[a];
            }
        }

        return Math.Sqrt(Enumerable.Range(0, heights.Length)
            .Where(i => rankOf[i] >= 0)
            .Average(i => Math.Pow(slope[i] / curvature[i], 2)));
    }

    private static int StepsToProbed(GridNodes nodes, int hole)
    {
        int column = hole % nodes.X.Count, row = hole / nodes.X.Count;
        return Enumerable.Range(0, nodes.Readings.Length)
            .Where(i => nodes.Readings[i] > 0)
            .Min(i => Math.Max(Math.Abs((i % nodes.X.Count) - column), Math.Abs((i / nodes.X.Count) - row)));
    }
}
