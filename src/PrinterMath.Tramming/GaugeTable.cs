namespace PrinterMath.Tramming;

/// <summary>Readings of a crossed study, operator by operator, trial by trial, place by place; their means, ranges and mean squares.</summary>
internal sealed class GaugeTable(double[] readings, int places, int operators, int trials)
{
    internal GaugeSquares Squares()
    {
        double mean = readings[0] + (readings.Average(z => z - readings[0]));
        double betweenOperators = 0, betweenPlaces = 0, cells = 0, error = 0;
        for (int o = 0; o < operators; o++)
        {
            betweenOperators += Math.Pow(OperatorMean(o) - mean, 2) * places * trials;
            for (int p = 0; p < places; p++)
            {
                double cell = CellMean(o, p);
                double together = cell - OperatorMean(o) - PlaceMean(p) + mean;
                cells += together * together * trials;
                for (int t = 0; t < trials; t++)
                {
                    error += Math.Pow(At(o, t, p) - cell, 2);
                }
            }
        }

        for (int p = 0; p < places; p++)
        {
            betweenPlaces += Math.Pow(PlaceMean(p) - mean, 2) * operators * trials;
        }

        int freeTogether = (operators - 1) * (places - 1), freeError = operators * places * (trials - 1);
        return new GaugeSquares(
            new MeanSquare(1, betweenOperators / (operators - 1), operators - 1),
            new MeanSquare(1, betweenPlaces / (places - 1), places - 1),
            new MeanSquare(1, cells / freeTogether, freeTogether),
            new MeanSquare(1, error / freeError, freeError));
    }

    internal double At(int o, int t, int p) => readings[(((o * trials) + t) * places) + p];

    internal double CellMean(int o, int p) => Enumerable.Range(0, trials).Average(t => At(o, t, p));

    internal double OperatorMean(int o) => Enumerable.Range(0, places).Average(p => CellMean(o, p));

    internal double PlaceMean(int p) => Enumerable.Range(0, operators).Average(o => CellMean(o, p));

    internal double MeanRange() =>
        Enumerable.Range(0, operators).Average(o => Enumerable.Range(0, places).Average(p => RangeOf(t => At(o, t, p), trials)));

    internal static double RangeOf(Func<int, double> value, int count) => Enumerable.Range(0, count).Max(value) - Enumerable.Range(0, count).Min(value);
}
