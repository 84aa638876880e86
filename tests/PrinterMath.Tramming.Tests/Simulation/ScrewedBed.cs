using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming.Tests.Simulation;

/// <summary>
/// A bed on three or four screws as a machine: each screw is turned, with error, and pushes its corner by its own true lead, through a gap when there is play; readings follow in time. Three corners carry a triangle
/// (areas); four, the corners of a square, carry mean height and mean slopes. In millimetres and seconds.
/// </summary>
internal sealed class ScrewedBed
{
    internal const double Lead = .5; // M3
    private const double ReadingTime = 8, PauseTime = 600;
    private static readonly (double X, double Y)[] Triangle = [(20, 15), (230, 40), (110, 220)];
    private static readonly (double X, double Y)[] Square = [(20, 20), (220, 20), (220, 220), (20, 220)];

    private readonly BedStory _story;
    private readonly Random _random;
    private readonly Noise _noise;
    private readonly double[] _heights;
    private readonly double[] _room;
    private readonly int _corner;
    private readonly int _moment;
    private double _time;
    private double _turnedSoFar;
    private int _pass;

    internal ScrewedBed(int seed, BedStory story)
    {
        _story = story;
        _random = new Random(seed);
        _noise = new Noise(seed + 1_000_000, story.Noise, BedStory.Repeatability);
        Places = story.Screws == 3 ? Triangle : Square;
        _heights = [.. Places.Select(_ => story.Tilt * ((2 * _random.NextDouble()) - 1))];
        if (story.Screws == 4)
        {
            _heights[3] = _heights[0] + _heights[2] - _heights[1];
        }

        Leads = [.. Places.Select(_ => Lead * (1 + (story.Spread.Lead * Gauss())))];
        Cross = new double[Places.Length, Places.Length];
        for (int i = 0; i < Places.Length; i++)
        {
            for (int j = 0; j < Places.Length; j++)
            {
                Cross[i, j] = i == j ? 0 : Lead * story.Spread.Cross * Gauss();
            }
        }

        _corner = _random.Next(Places.Length);
        _moment = _random.Next(2, Math.Max(3, story.Passes));
        double play = story.Fault == BedFault.Backlash ? story.Size : 0;
        Rooms = [.. Places.Select(_ => play * _random.NextDouble())];
        _room = [.. Rooms];
        if (story.Fault == BedFault.WrongLead)
        {
            Leads[_corner] += story.Size;
        }
    }

    internal (double X, double Y)[] Places { get; }

    internal double[] Leads { get; }

    /// <summary>The screw at which a fault of one corner sits.</summary>
    internal int Corner => _corner;

    internal double[,] Cross { get; }

    /// <summary>Pass before which a loose corner moves.</summary>
    internal int Moment => _moment;

    /// <summary>Room of each screw to the flank that raises, before the first turn.</summary>
    internal double[] Rooms { get; }

    internal BedSupports Supports => BedSupports.Of([.. Places.Select((p, i) => Bed.Screw($"s{i}", p.X, p.Y))]);

    internal static TrammingSequenceOptions Options(BedStory story) =>
        story.IsStated ? new TrammingSequenceOptions { ProbeRepeatability = Bed.Mm(BedStory.Repeatability) } : new TrammingSequenceOptions();

    /// <summary>All passes of the story.</summary>
    internal List<TrammingPass> Run()
    {
        List<TrammingPass> passes = [Read([])];
        while (passes.Count < _story.Passes)
        {
            passes.Add(Next(_story.Hunts ? Hunt() : Follow(passes[^1])));
        }

        return passes;
    }

    /// <summary>Turns made, and the pass after them.</summary>
    internal TrammingPass Next(AppliedTurn[] turns)
    {
        Make(turns);
        _pass++;
        _time += PauseTime;
        if (_story.Fault == BedFault.LooseCorner && _pass == _moment)
        {
            _heights[_corner] -= _story.Size;
        }

        return Read(turns);
    }

    /// <summary>Height spread of the plate over the bed, dome, twist and drift apart.</summary>
    internal double Spread()
    {
        double[] corners = [Flat(0, 0), Flat(240, 0), Flat(0, 240), Flat(240, 240)];
        return corners.Max() - corners.Min();
    }

    internal void Make(IEnumerable<AppliedTurn> turns)
    {
        foreach (AppliedTurn turn in turns.Where(t => t.ClockwiseTurns != 0))
        {
            int k = int.Parse(turn.Screw.AsSpan(1), System.Globalization.CultureInfo.InvariantCulture);
            double raising = -turn.ClockwiseTurns + (_story.Spread.Setting * Gauss()); // clockwise lowers
            _turnedSoFar += Math.Abs(raising) * Lead;
            double moved = Through(k, raising * Leads[k]);
            _heights[k] += moved;
            for (int j = 0; j < Places.Length; j++)
            {
                _heights[j] += Cross[j, k] * raising;
            }
        }
    }

    /// <summary>Height of the plate without dome, twist and drift.</summary>
    internal double Flat(double x, double y)
    {
        if (_story.Screws == 3)
        {
            return new StiffPlate(Places, _heights).FlatHeight(x, y);
        }

        double mean = _heights.Average();
        double alongX = (_heights[1] + _heights[2] - _heights[0] - _heights[3]) / 400;
        double alongY = (_heights[2] + _heights[3] - _heights[0] - _heights[1]) / 400;
        return mean + (alongX * (x - 120)) + (alongY * (y - 120));
    }

    /// <summary>Change of twist at the edge of the bed by all turns so far.</summary>
    internal double Twist => (_story.Fault == BedFault.Flex ? _story.Size * _turnedSoFar : 0)
        + (Places.Length == 4 ? _story.Compliance * (_heights[0] - _heights[1] + _heights[2] - _heights[3]) / 4 * (120 * 120) / (100 * 100) : 0);

    private double Through(int k, double demanded)
    {
        if (_story.Fault != BedFault.Backlash)
        {
            return demanded;
        }

        // room left before the upper flank touches; the lower flank has what remains of the play
        double idle = demanded > 0 ? Math.Min(demanded, _room[k]) : -Math.Min(-demanded, _story.Size - _room[k]);
        _room[k] -= idle;
        return demanded - idle;
    }

    private AppliedTurn[] Hunt() => [.. Places.Select((_, k) =>
    {
        double turns = .4 * ((2 * _random.NextDouble()) - 1);
        return turns > 0 ? AppliedTurn.Clockwise($"s{k}", Angle.FromRevolutions(turns)) : AppliedTurn.Counterclockwise($"s{k}", Angle.FromRevolutions(-turns));
    })];

    private AppliedTurn[] Follow(TrammingPass last) =>
        [.. Supports.Plan(PlaneFit.Fit(last.Points)).Turns.Where(t => t.WorthTurning).Select(AppliedTurn.AsPlanned)];

    private TrammingPass Read(AppliedTurn[] turned)
    {
        List<ProbePoint> points = [];
        List<Duration> times = [];
        double whole = (PauseTime + (_story.Side * _story.Side * ReadingTime)) * (_story.Passes - 1);
        for (int j = 0; j < _story.Side; j++)
        {
            for (int i = 0; i < _story.Side; i++)
            {
                double x = 240.0 * i / (_story.Side - 1), y = 240.0 * j / (_story.Side - 1);
                double z = Flat(x, y) + Shape(x, y) + Drift(x, y, _time / whole) + _noise.Next();
                points.Add(Bed.Point(x, y, z));
                times.Add(Duration.FromSeconds(_time));
                _time += ReadingTime;
            }
        }

        return _pass == 0 && turned.Length == 0 && points.Count > 0 && times[0].Seconds == 0 ? TrammingPass.First(points, times) : TrammingPass.After(turned, points, times);
    }

    private double Shape(double x, double y)
    {
        double dome = _story.Dome * (1 - (((x - 120) * (x - 120)) + ((y - 120) * (y - 120))) / (2 * 120 * 120));
        return dome + (Twist * (x - 120) * (y - 120) / (120 * 120));
    }

    private double Drift(double x, double y, double share) => _story.Fault switch
    {
        BedFault.CommonDrift => _story.Size * share,
        BedFault.CornerDrift => _story.Size * share * Weight(_corner, x, y),
        _ => 0,
    };

    /// <summary>Height of the stiff plate at a place for a height of 1 at one screw.</summary>
    internal double Weight(int screw, double x, double y)
    {
        if (_story.Screws == 3)
        {
            double[] unit = new double[3];
            unit[screw] = 1;
            return new StiffPlate(Places, unit).FlatHeight(x, y);
        }

        double sx = Places[screw].X > 120 ? 1 : -1, sy = Places[screw].Y > 120 ? 1 : -1;
        return .25 + (sx * (x - 120) / 400) + (sy * (y - 120) / 400);
    }

    private double Gauss() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
