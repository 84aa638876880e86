using WorkshopSimulator;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>What the entries of drive.csv should say, from the simulated drive itself: statics and searches of its own, no formula of the packages.</summary>
internal sealed class PlantedDrive
{
    private const double BeltWidth = 6;
    private const double Bore = 5e-3;
    private const double MotorTeeth = 50;

    private readonly DriveTruth _drive;
    private readonly double _target;

    internal PlantedDrive(DriveTruth drive, double targetNewtons) => (_drive, _target) = (drive, targetNewtons);

    internal double Lower => Bisect(1000, tension => tension - ((Share + _drive.SlackSideShare) * Transmitted(tension)));

    /// <summary>Shaft with half a turn of belt, idlers with a quarter, the belt's tight side.</summary>
    internal double Upper => Bisect(1000, tension =>
    {
        double force = Transmitted(tension);
        double tight = tension + (Share * force);
        return Math.Max(
            Math.Max(tight + tension - ((1 - Share) * force) - DriveJob.ShaftLoad, tight - (DriveJob.WorkingStrength * BeltWidth)),
            (Math.Sqrt(2) * tight) - _drive.IdlerLoad);
    });

    internal double Required => (_drive.Radius * ((DriveJob.Acceleration * Worst(_drive.MassX + (2 * Rotor), _drive.MassY + (2 * Rotor))) + _drive.Friction + (Drag * _target))) + _drive.MotorFriction;

    internal double Reserve => (Available() / 2) - Required;

    internal double Acceleration =>
        ((((Available() / 2) - _drive.MotorFriction) / _drive.Radius) - _drive.Friction - (Drag * _target)) / Worst(_drive.MassX + (2 * Rotor), _drive.MassY + (2 * Rotor));

    internal (double Lowest, double Highest) Modes()
    {
        double[] all = [.. Heads().Select(head => LowerMode(head.X, head.Y))];
        return (all.Min(), all.Max());
    }

    private double Rotor => (_drive.RotorInertia + _drive.PulleyInertia) / (_drive.Radius * _drive.Radius);

    /// <summary>Largest share of the force that a slack strand gives up, over the travel and both belts.</summary>
    private double Share => Heads().SelectMany(head => new[] { First(head.X, head.Y), First(_drive.BeamLength - head.X, head.Y) })
        .Max(first => Math.Max(first, _drive.BothStrands - first) / _drive.BothStrands);

    private double Drag => (_drive.BearingFriction * Bore / _drive.Radius * (1 + (4 * Math.Sqrt(0.5)))) + (5 * _drive.BendingLoss);

    private double Transmitted(double tension) => (DriveJob.Acceleration * Worst(_drive.MassX, _drive.MassY)) + _drive.Friction + (Drag * tension);

    /// <summary>Force on one motor for each unit of acceleration, the worst of 3600 directions.</summary>
    private static double Worst(double massX, double massY) => Enumerable.Range(0, 3600)
        .Max(i => Math.Abs((massX * Math.Cos(i * Math.PI / 1800)) + (massY * Math.Sin(i * Math.PI / 1800))) / 2);

    /// <summary>Strand from the head over the beam idler, a quarter turn, to the motor.</summary>
    private double First(double x, double y) => x - (_drive.CarriageLength / 2) + (Math.PI / 2 * _drive.Radius) + y;

    private IEnumerable<(double X, double Y)> Heads() =>
        from i in Enumerable.Range(0, 9)
        from j in Enumerable.Range(0, 9)
        select (_drive.TravelXFrom + (i / 8.0 * (_drive.TravelXTo - _drive.TravelXFrom)), _drive.TravelYFrom + (j / 8.0 * (_drive.TravelYTo - _drive.TravelYFrom)));

    /// <summary>Eigenvalues of M⁻¹K by trace and determinant.</summary>
    private double LowerMode(double x, double y)
    {
        double a = Spring(First(x, y));
        double b = Spring(First(_drive.BeamLength - x, y));
        double half = ((a + b) / _drive.MassX / 2) + ((a + b) / _drive.MassY / 2);
        double determinant = ((a + b) * (a + b) - ((a - b) * (a - b))) / (_drive.MassX * _drive.MassY);
        return Math.Sqrt(half - Math.Sqrt((half * half) - determinant)) / (2 * Math.PI);
    }

    private double Spring(double first)
    {
        double belt = (_drive.AxialStiffness / first) + (_drive.AxialStiffness / (_drive.BothStrands - first));
        double motor = MotorTeeth * _drive.HoldingTorque / (_drive.Radius * _drive.Radius);
        return belt * motor / (belt + motor);
    }

    /// <summary>Largest torque current that some field current, of 801 tried, keeps within current and voltage.</summary>
    private double Available()
    {
        double most = DriveJob.RatedCurrent * Math.Sqrt(2);
        double constant = _drive.HoldingTorque / most;
        double speed = Math.Sqrt(2) * DriveJob.Speed / _drive.Radius;
        double reactance = MotorTeeth * speed * _drive.Inductance;
        return constant * Bisect(most, torqueCurrent =>
        {
            double field = Math.Sqrt(Math.Max(0, (most * most) - (torqueCurrent * torqueCurrent)));
            return Enumerable.Range(-400, 801).Min(i =>
            {
                double fieldCurrent = i / 400.0 * field;
                double along = (constant * speed) + (_drive.Resistance * torqueCurrent) - (reactance * fieldCurrent);
                double across = (_drive.Resistance * fieldCurrent) + (reactance * torqueCurrent);
                return (along * along) + (across * across) - (DriveJob.Voltage * DriveJob.Voltage);
            });
        });
    }

    /// <summary>Where a function that rises passes zero, between zero and a bound; the bound if it does not.</summary>
    private static double Bisect(double high, Func<double, double> rises)
    {
        double low = 0;
        if (rises(high) <= 0)
        {
            return high;
        }

        for (int i = 0; i < 50; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = rises(middle) > 0 ? (low, middle) : (middle, high);
        }

        return low;
    }
}
