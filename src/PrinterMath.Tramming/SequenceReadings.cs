using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>All readings of a sequence in one row each, what each screw had been turned by then, and which rows share a place.</summary>
internal sealed class SequenceReadings
{
    /// <summary>Readings nearer than this are of one place, in metres.</summary>
    private const double SamePlace = 0.05e-3;

    /// <summary>Degrees of freedom of the noise that flexing and drift may not eat up.</summary>
    private const int LeastFreedom = 8;

    private readonly AdjustingScrew[] _screws;
    private readonly ProbePoint[] _points;
    private readonly double[] _influence;
    private readonly double _middleX;
    private readonly double _middleY;
    private readonly double _halfX;
    private readonly double _halfY;

    internal SequenceReadings(BedSupports supports, TrammingPass[] passes, TrammingSequenceOptions options)
    {
        _screws = supports.ScrewSpan.ToArray();
        _points = [.. passes.SelectMany(pass => pass.Points)];
        Pass = [.. passes.SelectMany((pass, p) => Enumerable.Repeat(p, pass.PointSpan.Length))];
        Passes = passes.Length;
        HasTimes = passes.All(pass => pass.HasTimes);
        double[] seconds = HasTimes ? [.. passes.SelectMany(pass => pass.Seconds.ToArray())] : [];
        Span = HasTimes ? seconds[^1] - seconds[0] : 0;
        HasTimes = Span > 0;
        Time = HasTimes ? [.. seconds.Select(t => (t - seconds[0]) / Span)] : [];
        Moves = [.. _screws.Select(screw => passes.Select(pass => Raising(screw, pass)).ToArray())];
        Turned = [.. Moves.Select(Cumulative)];
        _influence = new double[_points.Length * _screws.Length];
        for (int i = 0; i < _influence.Length; i++)
        {
            AdjustingScrew screw = _screws[i % _screws.Length];
            ProbePoint point = _points[i / _screws.Length];
            _influence[i] = supports.Axes.Influence(point.XMeters, point.YMeters, screw.XMeters, screw.YMeters);
        }

        (_middleX, _halfX) = Extent([.. _points.Select(p => p.XMeters)]);
        (_middleY, _halfY) = Extent([.. _points.Select(p => p.YMeters)]);
        IsStated = options.ProbeRepeatability is not null || _points.All(p => p.HasUncertainty);
        double repeatability = options.ProbeRepeatability?.Meters ?? 0;
        RootWeight = [.. _points.Select(p => !IsStated ? 1 : 1 / (p.HasUncertainty ? p.StandardUncertaintyMeters : repeatability))];
        (Place, Places) = PlacesOf(_points);
        PlacesAreShared = Enumerable.Range(0, Places).All(place => Rows(place).Distinct().Skip(1).Any());
        Noise = NoiseOf();
        for (int i = 0; Noise.IsKnown && i < RootWeight.Length; i++)
        {
            RootWeight[i] /= Math.Sqrt(Noise.UnitVariance);
        }
    }

    internal int Count => _points.Length;

    internal int Passes { get; }

    internal ReadOnlySpan<AdjustingScrew> Screws => _screws;

    internal int[] Pass { get; }

    internal bool HasTimes { get; }

    /// <summary>Time from the first reading to the last, in seconds.</summary>
    internal double Span { get; }

    /// <summary>Time of each reading, from 0 at the first to 1 at the last.</summary>
    internal double[] Time { get; }

    /// <summary>Turns before each pass, for each screw, positive in the sense that is to raise the bed.</summary>
    internal double[][] Moves { get; }

    internal double[][] Turned { get; }

    internal bool IsStated { get; }

    internal double[] RootWeight { get; }

    internal int[] Place { get; }

    internal int Places { get; }

    /// <summary>Whether every place was read in two passes or more: then its height needs no model.</summary>
    internal bool PlacesAreShared { get; }

    internal NoiseScale Noise { get; }

    internal double Height(int row) => _points[row].ZMeters;

    internal ProbePoint Point(int row) => _points[row];

    internal double Influence(int row, int screw) => _influence[(row * _screws.Length) + screw];

    internal double[] Column(Func<int, double> value)
    {
        double[] column = new double[Count];
        for (int i = 0; i < column.Length; i++)
        {
            column[i] = RootWeight[i] * value(i);
        }

        return column;
    }

    /// <summary>Twist and the two bows with an amplitude of 1 at the edge of what was probed; a plane apart.</summary>
    internal double Shape(int row, int pattern)
    {
        double x = (_points[row].XMeters - _middleX) / _halfX;
        double y = (_points[row].YMeters - _middleY) / _halfY;
        return pattern switch { 0 => x * y, 1 => x * x, _ => y * y };
    }

    internal IEnumerable<double[]> ShapeOfBed()
    {
        if (!PlacesAreShared)
        {
            yield return Column(_ => 1);
            yield return Column(i => (_points[i].XMeters - _middleX) / _halfX);
            yield return Column(i => (_points[i].YMeters - _middleY) / _halfY);
            for (int pattern = 0; pattern < 3; pattern++)
            {
                int shape = pattern;
                yield return Column(i => Shape(i, shape));
            }
        }
    }

    internal IEnumerable<double[]> ShapeChanges()
    {
        for (int pass = 1; pass < Passes; pass++)
        {
            for (int pattern = 0; pattern < 3; pattern++)
            {
                (int p, int shape) = (pass, pattern);
                yield return Column(i => Pass[i] == p ? Shape(i, shape) : 0);
            }
        }
    }

    private static double[] Cumulative(double[] moves)
    {
        double sum = 0;
        return [.. moves.Select(move => sum += move)];
    }

    private static double Raising(AdjustingScrew screw, TrammingPass pass)
    {
        double clockwise = pass.Turned.Where(turn => string.Equals(turn.Screw, screw.Name, StringComparison.Ordinal)).Sum(turn => turn.ClockwiseTurns);
        return screw.Clockwise == BedMotion.Raises ? clockwise : -clockwise;
    }

    private static (double Middle, double Half) Extent(double[] values)
    {
        double low = values.Min(), high = values.Max();
        return ((low + high) / 2, high > low ? (high - low) / 2 : 1);
    }

    private static (int[] Place, int Places) PlacesOf(ProbePoint[] points)
    {
        int[] place = new int[points.Length];
        List<ProbePoint> known = [];
        for (int i = 0; i < points.Length; i++)
        {
            place[i] = known.FindIndex(p => Math.Abs(p.XMeters - points[i].XMeters) < SamePlace && Math.Abs(p.YMeters - points[i].YMeters) < SamePlace);
            if (place[i] < 0)
            {
                place[i] = known.Count;
                known.Add(points[i]);
            }
        }

        return (place, known.Count);
    }

    private IEnumerable<int> Rows(int place) => Enumerable.Range(0, Count).Where(i => Place[i] == place).Select(i => Pass[i]);

    /// <summary>
    /// What a free plane in each pass leaves; where enough readings remain, changes of shape and a drift within the passes are taken out too, so that a cause does not pass for noise.
    /// </summary>
    private NoiseScale NoiseOf()
    {
        ColumnBasis basis = new(Place, RootWeight, PlacesAreShared ? Places : 0);
        foreach (double[] column in ShapeOfBed())
        {
            basis.Add(column);
        }

        for (int pass = 1; pass < Passes; pass++)
        {
            int p = pass;
            basis.Add(Column(i => Pass[i] == p ? 1 : 0));
            basis.Add(Column(i => Pass[i] == p ? (_points[i].XMeters - _middleX) / _halfX : 0));
            basis.Add(Column(i => Pass[i] == p ? (_points[i].YMeters - _middleY) / _halfY : 0));
        }

        double[][] extras = [.. ShapeChanges(), .. HasTimes ? Enumerable.Range(0, _screws.Length).Select(k => Column(i => Time[i] * Influence(i, k))) : []];
        if (Count - basis.Rank - extras.Length >= LeastFreedom)
        {
            foreach (double[] extra in extras)
            {
                basis.Add(extra);
            }
        }

        double reference = Height(0);
        double[] rest = Column(i => Height(i) - reference);
        basis.Remove(rest);
        return NoiseScale.Of(IsStated, true, ColumnBasis.Dot(rest, rest), Count - basis.Rank, _points.Max(p => Math.Abs(p.ZMeters)));
    }
}
