namespace PrinterMath.Tramming;

/// <summary>The changes of a plan, which limits hold them, and their covariance.</summary>
internal sealed class LevelSolution
{
    private readonly HalfPlane[] _edges;
    private readonly bool _heightIsGiven;

    private LevelSolution(double[] changes, double slopeX, double slopeY, double height, HalfPlane[] edges, int pinned, bool heightIsGiven, bool limited, NearestPoint? conflict)
    {
        Changes = changes;
        SlopeX = slopeX;
        SlopeY = slopeY;
        Height = height;
        _edges = edges;
        Pinned = pinned;
        _heightIsGiven = heightIsGiven;
        IsLimited = limited;
        Conflict = conflict;
    }

    internal double[] Changes { get; }

    internal double SlopeX { get; }

    internal double SlopeY { get; }

    internal double Height { get; }

    /// <summary>The support whose change is given rather than found, by its limit or because it stays still; −1 for none.</summary>
    internal int Pinned { get; }

    /// <summary>Whether limits keep the bed from where it would be brought without them.</summary>
    internal bool IsLimited { get; }

    /// <summary>Whether limits keep the bed from becoming as level as the supports could make it.</summary>
    internal bool TiltIsLimited => _edges.Length > 0;

    /// <summary>Whether a support's change is given by a limit, or by the support being the one that stays.</summary>
    internal bool IsHeld(int support)
    {
        foreach (HalfPlane edge in _edges)
        {
            if (edge.Lower == support || edge.Upper == support)
            {
                return true;
            }
        }

        return support == Pinned;
    }

    /// <summary>Limits that exclude each other; null when there is a plan.</summary>
    internal NearestPoint? Conflict { get; }

    internal static LevelSolution Of(LevelProblem problem, LevelGoal goal)
    {
        int n = problem.Count;
        double[] changes = new double[n];
        int pinned = goal.Least is double[] weights ? Median(problem, goal, weights, changes) : -1;
        problem.Solve(goal.Heights, goal.Reference, goal.SlopeX, goal.SlopeY, [], pinned, [], 0, changes);
        if (pinned >= 0)
        {
            changes[pinned] = 0;
        }

        if (Within(changes, goal))
        {
            return new LevelSolution(changes, problem.SlopeX, problem.SlopeY, problem.Height, [], pinned, goal.HeightIsGiven, false, null);
        }

        var nearest = NearestPoint.Of(problem.HalfPlanes(goal.Heights, goal.Reference, goal.SlopeX, goal.SlopeY, goal.Low, goal.High));
        if (!nearest.Exists)
        {
            return new LevelSolution([], 0, 0, 0, [], -1, goal.HeightIsGiven, true, nearest);
        }

        HalfPlane[] edges = [.. nearest.Set];
        double[] bounds = [.. edges.Select(edge => LevelProblem.Bound(edge, goal.Low, goal.High))];
        pinned = goal.IsAnchored ? -1 : edges.Length > 0 ? edges[0].Lower : pinned;
        double pin = edges.Length > 0 && !goal.IsAnchored ? goal.Low[pinned] : 0;
        problem.Solve(goal.Heights, goal.Reference, goal.SlopeX, goal.SlopeY, edges, pinned, bounds, pin, changes);
        if (edges.Length == 0 && !goal.IsAnchored)
        {
            (pinned, pin) = Shift(changes, goal, pinned);
            problem.Solve(goal.Heights, goal.Reference, goal.SlopeX, goal.SlopeY, edges, pinned, bounds, pin, changes);
        }

        for (int i = 0; i < n; i++)
        {
            changes[i] = Snap(Math.Clamp(changes[i], goal.Low[i], goal.High[i]), i, pinned, pin, edges, goal);
        }

        return new LevelSolution(changes, problem.SlopeX, problem.SlopeY, problem.Height, edges, pinned, goal.HeightIsGiven, true, null);
    }

    /// <summary>
    /// Covariance of the changes, to first order and with the limits that bind: what each independent part of the measured heights (two slopes, the mean, the twist) changes in them.
    /// </summary>
    internal double[] Covariance(LevelProblem problem, in PlaneSolution plane, TwistFit? twist, ReadOnlySpan<AdjustableSupport> supports, (double X, double Y) reference)
    {
        int n = supports.Length;
        double[] covariance = new double[n * n];
        Span<double> heights = stackalloc double[n];
        Span<double> changes = stackalloc double[n];
        Span<double> zeros = stackalloc double[2];
        zeros.Clear();
        PrincipalAxes axes = plane.Axes;
        for (int part = 0; part < (twist is null ? 3 : 4); part++)
        {
            double gx = part == 0 ? axes.Cosine : part == 1 ? -axes.Sine : 0;
            double gy = part == 0 ? axes.Sine : part == 1 ? axes.Cosine : 0;
            double variance = part switch
            {
                0 => plane.UnitVariance / axes.AlongMoment,
                1 => plane.UnitVariance / axes.AcrossMoment,
                2 => plane.UnitVariance / axes.Weight,
                _ => twist!.Variance,
            };
            double mean = 0;
            for (int i = 0; i < n; i++)
            {
                heights[i] = part == 2 ? 1
                    : part == 3 ? twist!.Rest(supports[i].XMeters, supports[i].YMeters)
                    : (gx * (supports[i].XMeters - axes.CentreX)) + (gy * (supports[i].YMeters - axes.CentreY));
                mean += heights[i] / n;
            }

            double at = part == 2 ? 1 : part == 3 ? twist!.Rest(reference.X, reference.Y) : (gx * (reference.X - axes.CentreX)) + (gy * (reference.Y - axes.CentreY));
            double brought = _heightIsGiven ? 0 : part == 3 && !problem.IsAnchored ? mean : at;
            problem.Solve(heights, brought, gx, gy, _edges, Pinned, zeros, 0, changes);
            for (int i = 0; i < n; i++)
            {
                changes[i] = IsHeld(i) ? 0 : changes[i];
            }

            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    covariance[(i * n) + j] += variance * changes[i] * changes[j];
                }
            }
        }

        return covariance;
    }

    private static bool Within(ReadOnlySpan<double> changes, LevelGoal goal)
    {
        for (int i = 0; i < changes.Length; i++)
        {
            if (!(changes[i] >= goal.Low[i] && changes[i] <= goal.High[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The support whose stillness makes the sum of weighted changes least.</summary>
    private static int Median(LevelProblem problem, LevelGoal goal, double[] weights, double[] changes)
    {
        problem.Solve(goal.Heights, goal.Reference, goal.SlopeX, goal.SlopeY, [], -1, [], 0, changes);
        int[] order = [.. Enumerable.Range(0, changes.Length)];
        Array.Sort([.. changes], order);
        double half = weights.Sum() / 2, sum = 0;
        for (int k = 0; k < order.Length; k++)
        {
            sum += weights[order[k]];
            if (sum >= half * (1 + 1e-12))
            {
                return order[k];
            }

            // every height between this support and the next does as well: the one nearer to the mean
            if (sum >= half * (1 - 1e-12))
            {
                return Math.Abs(changes[order[k]]) <= Math.Abs(changes[order[k + 1]]) ? order[k] : order[k + 1];
            }
        }

        return order[^1];
    }

    /// <summary>Moves all changes by the least that brings them within the limits, which a common height can.</summary>
    private static (int Pinned, double Pin) Shift(ReadOnlySpan<double> changes, LevelGoal goal, int pinned)
    {
        double up = double.NegativeInfinity, down = double.PositiveInfinity;
        int raised = 0, lowered = 0;
        for (int i = 0; i < changes.Length; i++)
        {
            (up, raised) = goal.Low[i] - changes[i] > up ? (goal.Low[i] - changes[i], i) : (up, raised);
            (down, lowered) = goal.High[i] - changes[i] < down ? (goal.High[i] - changes[i], i) : (down, lowered);
        }

        return up > 0 ? (raised, goal.Low[raised]) : down < 0 ? (lowered, goal.High[lowered]) : (pinned, 0);
    }

    /// <summary>A change at its limit is that limit to the last bit.</summary>
    private static double Snap(double change, int i, int pinned, double pin, HalfPlane[] edges, LevelGoal goal)
    {
        foreach (HalfPlane edge in edges)
        {
            if (edge.Lower == i || edge.Upper == i)
            {
                return edge.Lower == i ? goal.Low[i] : goal.High[i];
            }
        }

        return i == pinned ? pin : change;
    }
}
