using System.Numerics;

namespace PrinterMath.Resonance;

/// <summary>Poles and remainders fitted to a response by least squares: Levenberg's steps in the poles, residues and remainders solved exactly at each.</summary>
internal sealed class ResponseModel
{
    private const int Rounds = 80;
    private const double LeastDamping = 1e-7;
    private const double LargestDamping = 0.9;
    private const double LargestMove = 0.1;
    private const double LargestStretch = 1.0;
    private readonly ResponseProblem _problem;

    private ResponseModel(ResponseProblem problem, ResponsePole[] poles, double[] residual)
    {
        _problem = problem;
        Poles = poles;
        Residual = residual;
        Sum = Math.Max(WeightedColumns.Dot(residual, residual), problem.RoundingSum);
    }

    internal ResponsePole[] Poles { get; }

    /// <summary>Weighted residuals: real parts, then imaginary parts.</summary>
    internal double[] Residual { get; }

    /// <summary>Sum of their squares, no less than what rounding leaves.</summary>
    internal double Sum { get; }

    /// <summary>Readings, two to a line, less parameters.</summary>
    internal int Freedom => (2 * _problem.Count) - (4 * Poles.Length) - ResponseProblem.Remainders;

    /// <summary>The model with the given poles; null when they cannot be told apart at these lines.</summary>
    internal static ResponseModel? With(ResponseProblem problem, ReadOnlySpan<ResponsePole> poles)
    {
        double[] residual = problem.Right();
        if (WeightedColumns.Factor(problem.LinearColumns(poles)) is not { } factored)
        {
            return null;
        }

        double[] solved = factored.Solve(residual);
        ResponsePole[] complete = poles.ToArray();
        for (int m = 0; m < complete.Length; m++)
        {
            complete[m] = complete[m] with { Residue = new Complex(solved[2 * m], solved[(2 * m) + 1]) };
        }

        return new ResponseModel(problem, complete, residual);
    }

    /// <summary>The best model from these poles on; null when no model is had there.</summary>
    internal static ResponseModel? Fit(ResponseProblem problem, ReadOnlySpan<ResponsePole> poles, CancellationToken cancellation)
    {
        ResponseModel? model = With(problem, poles);
        double damping = 1e-3;
        for (int round = 0; model is not null && model.Poles.Length > 0 && round < Rounds && damping < 1e10; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (model.Sum <= problem.RoundingSum || model.Stepped(damping) is not { } next)
            {
                break;
            }

            if (next.Sum < model.Sum)
            {
                bool settled = model.Sum - next.Sum < 1e-12 * model.Sum;
                model = next;
                damping *= 0.1;
                if (settled)
                {
                    break;
                }
            }
            else
            {
                damping *= damping < 1e-6 ? 1e3 : 10;
            }
        }

        return model;
    }

    /// <summary>Covariance of ln ω_n, ln ζ and both parts of the residue of each pole for readings of variance one; null where the poles cannot be told apart.</summary>
    internal double[,]? Covariance() => WeightedColumns.Factor(_problem.AllColumns(Poles))?.Covariance(_problem.Errors.Correlation);

    internal Complex[] Fitted() => _problem.Fitted(Residual);

    /// <summary>One step, the squares of the poles' own columns enlarged by the damping; null where the columns do not stand apart.</summary>
    private ResponseModel? Stepped(double damping)
    {
        double[][] columns = _problem.AllColumns(Poles);
        int rows = Residual.Length, extra = 2 * Poles.Length;
        for (int j = 0; j < columns.Length; j++)
        {
            double length = Math.Sqrt(WeightedColumns.Dot(columns[j], columns[j]));
            Array.Resize(ref columns[j], rows + extra);
            if (j < 4 * Poles.Length && j % 4 < 2)
            {
                columns[j][rows + (2 * (j / 4)) + (j % 4)] = Math.Sqrt(damping) * length;
            }
        }

        double[] right = Residual;
        Array.Resize(ref right, rows + extra);
        if (WeightedColumns.Factor(columns) is not { } factored)
        {
            return null;
        }

        double[] step = factored.Solve(right);
        ResponsePole[] moved = new ResponsePole[Poles.Length];
        for (int m = 0; m < moved.Length; m++)
        {
            moved[m] = Poles[m] with
            {
                LogOmega = Poles[m].LogOmega + Math.Clamp(step[4 * m], -LargestMove, LargestMove),
                LogDamping = Math.Clamp(
                    Poles[m].LogDamping + Math.Clamp(step[(4 * m) + 1], -LargestStretch, LargestStretch), Math.Log(LeastDamping), Math.Log(LargestDamping)),
            };
        }

        return With(_problem, moved);
    }
}
