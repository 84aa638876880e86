using UnitsNet;

namespace PrinterMath.Tramming.Tests;

/// <summary>A bed on screws at random places around the probed rectangle of 240 by 180 mm, with random tilt and random limits, in millimetres.</summary>
internal sealed class RandomBed
{
    internal RandomBed(int seed)
    {
        var random = new Random(seed);
        int count = 3 + random.Next(4);
        X = new double[count];
        Y = new double[count];
        Lead = new double[count];
        Low = new double[count];
        High = new double[count];
        for (int i = 0; i < count; i++)
        {
            double angle = 2 * Math.PI * (i + (.6 * random.NextDouble())) / count;
            (X[i], Y[i]) = (120 + (130 * Math.Cos(angle)), 90 + (100 * Math.Sin(angle)));
            Lead[i] = random.Next(2) == 0 ? .5 : .7;
            Low[i] = -random.NextDouble();
            High[i] = random.NextDouble();
        }

        Slopes = (.012 * (random.NextDouble() - .5), .012 * (random.NextDouble() - .5));
        Supports = BedSupports.Of([.. X.Select((_, i) => AdjustingScrew.At($"s{i}", Bed.Mm(X[i]), Bed.Mm(Y[i]), ScrewThread.FromLead(Bed.Mm(Lead[i])), BedMotion.Raises))]);
        Plane = PlaneFit.Fit(Bed.Grid(60, 5, 4, (x, y) => 1 + (Slopes.X * x) + (Slopes.Y * y)), new PlaneFitOptions { ProbeRepeatability = Length.FromMicrometers(4) });
    }

    internal double[] X { get; }

    internal double[] Y { get; }

    internal double[] Lead { get; }

    internal double[] Low { get; }

    internal double[] High { get; }

    internal (double X, double Y) Slopes { get; }

    internal BedSupports Supports { get; }

    internal PlaneFit Plane { get; }

    internal TravelLimit[] Limits => [.. X.Select((_, i) => TravelLimit.Between($"s{i}", Bed.Mm(Low[i]), Bed.Mm(High[i])))];

    internal double[] Changes(TrammingPlan plan) => [.. plan.Turns.Select(turn => turn.HeightChange.Millimeters())];

    /// <summary>Sum over the probed places of the squared height of a tilt about their middle, mm².</summary>
    internal static double Tilt(double slopeX, double slopeY)
    {
        double sum = 0;
        for (int i = 0; i < 20; i++)
        {
            double z = (slopeX * ((i % 5 * 60) - 120)) + (slopeY * ((i / 5 * 60) - 90));
            sum += z * z;
        }

        return sum;
    }
}
