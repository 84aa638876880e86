using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace PrinterMath.Tramming.Tests.Simulation;

/// <summary>
/// What the readings of one simulated bed hold of its fault, for a judge who knows place, direction, size, noise and the spread of leads, couplings and settings, and looks for nothing else: distances, in
/// standard deviations, between means of readings by generalised least squares, the height of each place free. In millimetres.
/// </summary>
internal sealed class FaultInformation
{
    private const double Reading = 8, Pause = 600;
    private readonly BedStory _story;
    private readonly ScrewedBed _bed;
    private readonly List<TrammingPass> _passes;
    private readonly Cholesky<double> _covariance;
    private readonly Matrix<double> _places;
    private readonly Cholesky<double> _information;
    private readonly int _eachPass;

    internal FaultInformation(ScrewedBed bed, BedStory story, List<TrammingPass> passes)
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

    /// <summary>Distance of the fault from health.</summary>
    internal double FromHealth => Distance(Fault());

    /// <summary>Distance of the fault from the likest of another cause at the same corner, or for play at any corner, of the same size or larger.</summary>
    internal double FromRivals
    {
        get
        {
            Vector<double> fault = Fault();
            return Rivals().Select(rival => Distance(fault - (Nearest(fault, rival) * rival))).DefaultIfEmpty(double.PositiveInfinity).Min();
        }
    }

    private Vector<double> Fault() => _story.Fault switch
    {
        BedFault.CornerDrift => _story.Size * Drift(_bed.Corner),
        BedFault.CommonDrift => _story.Size * Places().Aggregate(Zero(), (sum, k) => sum + Drift(k)),
        BedFault.LooseCorner => -_story.Size * Step(_bed.Corner, _bed.Moment),
        BedFault.Flex => Flex(),
        BedFault.Backlash => Places().Aggregate(Zero(), (sum, k) => sum + Lost(k)),
        _ => throw new NotSupportedException(),
    };

    /// <summary>Each with a largest move of 1.</summary>
    private IEnumerable<Vector<double>> Rivals() => _story.Fault switch
    {
        BedFault.CornerDrift => Steps(_bed.Corner),
        BedFault.LooseCorner => [Drift(_bed.Corner), .. Leads(_bed.Corner)],
        BedFault.Backlash => Places().SelectMany(k => (IEnumerable<Vector<double>>)[Drift(k), .. Steps(k), .. Leads(k)]),
        _ => [],
    };

    private IEnumerable<int> Places() => Enumerable.Range(0, _bed.Places.Length);

    private Vector<double> Zero() => Vector<double>.Build.Dense(_passes.Count * _eachPass);

    private Vector<double> Drift(int corner) =>
        At(corner, (pass, reading) => ((pass * (Pause + (_eachPass * Reading))) + (reading * Reading)) / ((_passes.Count - 1) * (Pause + (_eachPass * Reading))));

    private IEnumerable<Vector<double>> Steps(int corner) => Enumerable.Range(1, _passes.Count - 1).Select(pass => Step(corner, pass));

    private Vector<double> Step(int corner, int before) => At(corner, (pass, _) => pass >= before ? 1 : 0);

    private IEnumerable<Vector<double>> Leads(int screw)
    {
        double[] turned = [.. Enumerable.Range(0, _passes.Count).Select(pass => Moves(screw).Take(pass + 1).Sum())];
        double most = turned.Max(Math.Abs);
        return most > 0 ? [At(screw, (pass, _) => turned[pass] / most)] : [];
    }

    private Vector<double> Flex()
    {
        double[] each = [.. Enumerable.Range(0, _passes.Count).Select(pass => Places().Sum(k => Math.Abs(Moves(k)[pass])) * ScrewedBed.Lead)];
        return Rows((pass, _, x, y) => _story.Size * each.Take(pass + 1).Sum() * (x - 120) * (y - 120) / (120 * 120));
    }

    private Vector<double> Lost(int screw)
    {
        double room = _bed.Rooms[screw], sum = 0;
        double[] lost = [.. Moves(screw).Select(turns =>
        {
            double raising = -turns * _bed.Leads[screw];
            double idle = raising > 0 ? Math.Min(raising, room) : -Math.Min(-raising, _story.Size - room);
            room -= idle;
            return sum -= idle;
        })];
        return At(screw, (pass, _) => lost[pass]);
    }

    private double[] Moves(int screw) => [.. _passes.Select(pass => pass.Turned.Where(turn => turn.Screw == $"s{screw}").Sum(turn => turn.ClockwiseTurns))];

    /// <summary>The multiple of a rival, of the fault's size at least, that comes nearest to it.</summary>
    private double Nearest(Vector<double> fault, Vector<double> rival)
    {
        double best = Product(fault, rival) / Product(rival, rival);
        return Math.Max(Math.Abs(best), _story.Size) * (best < 0 ? -1 : 1);
    }

    private IEnumerable<Vector<double>> Spread()
    {
        for (int screw = 0; screw < _bed.Places.Length; screw++)
        {
            double[] moves = Moves(screw);
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

    private Vector<double> At(int screw, Func<int, int, double> height) => Rows((pass, reading, x, y) => height(pass, reading) * _bed.Weight(screw, x, y));

    private Vector<double> Rows(Func<int, int, double, double, double> height) => Vector<double>.Build.Dense(
        _passes.Count * _eachPass, row => height(row / _eachPass, row % _eachPass, row % _eachPass % _story.Side * Spacing, row % _eachPass / _story.Side * Spacing));

    private double Spacing => 240.0 / (_story.Side - 1);

    private double Distance(Vector<double> mean) => Math.Sqrt(Product(mean, mean));

    private double Product(Vector<double> one, Vector<double> other)
    {
        Vector<double> whitened = _covariance.Solve(other);
        Vector<double> ofPlaces = _places.TransposeThisAndMultiply(whitened);
        return one.DotProduct(whitened) - _places.TransposeThisAndMultiply(_covariance.Solve(one)).DotProduct(_information.Solve(ofPlaces));
    }
}
