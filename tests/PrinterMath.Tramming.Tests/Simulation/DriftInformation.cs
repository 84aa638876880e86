using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace PrinterMath.Tramming.Tests.Simulation;

/// <summary>
/// What the readings of one simulated bed hold of a drift at its corner, for a judge who knows corner, direction, size, noise and the spread of leads, couplings and settings, and looks for nothing else: distances, in
/// standard deviations, between means of readings by generalised least squares, the height of each place free. In millimetres.
/// </summary>
internal sealed class DriftInformation
{
    private const double Reading = 8, Pause = 600;
    private readonly BedStory _story;
    private readonly ScrewedBed _bed;
    private readonly List<TrammingPass> _passes;
    private readonly Cholesky<double> _covariance;
    private readonly Matrix<double> _places;
    private readonly Cholesky<double> _information;
    private readonly int _eachPass;

    internal DriftInformation(ScrewedBed bed, BedStory story, List<TrammingPass> passes)
    {
        (_bed, _story, _passes, _eachPass) = (bed, story, passes, story.Side * story.Side);
        int n = passes.Count * _eachPass;
        Matrix<double> covariance = Matrix<double>.Build.DenseDiagonal(n, BedStory.Repeatability * BedStory.Repeatability);
        foreach (Vector<double> column in Spread())
        {
            covariance += column.OuterProduct(column);
        }

        _covariance = covariance.Cholesky();
        _places = Matrix<double>.Build.Dense(n, _eachPass, (row, place) => row % _eachPass == place ? 1 : 0);
        _information = _places.TransposeThisAndMultiply(_covariance.Solve(_places)).Cholesky();
    }

    /// <summary>Distance of the drift from health.</summary>
    internal double FromHealth => Distance(Drift());

    /// <summary>Distance of the drift from a step of the same size at the same corner, before the pass that suits it best.</summary>
    internal double FromStep => Enumerable.Range(1, _passes.Count - 1).Min(pass => Distance(Drift() - At(_bed.Corner, (p, _) => p >= pass ? _story.Size : 0)));

    private Vector<double> Drift() => At(_bed.Corner, (pass, reading) => _story.Size * ((pass * (Pause + (_eachPass * Reading))) + (reading * Reading)) / ((_passes.Count - 1) * (Pause + (_eachPass * Reading))));

    private IEnumerable<Vector<double>> Spread()
    {
        for (int screw = 0; screw < _bed.Places.Length; screw++)
        {
            double[] moves = [.. _passes.Select(pass => pass.Turned.Where(turn => turn.Screw == $"s{screw}").Sum(turn => turn.ClockwiseTurns))];
            for (int at = 0; at < _bed.Places.Length; at++)
            {
                double sigma = ScrewedBed.Lead * (at == screw ? _story.Spread.Lead : _story.Spread.Cross);
                yield return At(at, (pass, _) => sigma * moves.Take(pass + 1).Sum());
            }

            foreach (int turned in Enumerable.Range(1, _passes.Count - 1).Where(pass => moves[pass] != 0))
            {
                yield return At(screw, (pass, _) => pass >= turned ? ScrewedBed.Lead * _story.Spread.Setting : 0);
            }
        }
    }

    private Vector<double> At(int screw, Func<int, int, double> height) => Vector<double>.Build.Dense(_passes.Count * _eachPass, row =>
    {
        int place = row % _eachPass;
        double step = 240.0 / (_story.Side - 1);
        return height(row / _eachPass, place) * _bed.Weight(screw, place % _story.Side * step, place / _story.Side * step);
    });

    private double Distance(Vector<double> mean)
    {
        Vector<double> whitened = _covariance.Solve(mean);
        Vector<double> ofPlaces = _places.TransposeThisAndMultiply(whitened);
        return Math.Sqrt(mean.DotProduct(whitened) - ofPlaces.DotProduct(_information.Solve(ofPlaces)));
    }
}
