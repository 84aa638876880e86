namespace PrinterMath.SurfaceMesh;

/// <summary>Extremes and root mean square of deviations from a plane, in metres.</summary>
internal sealed record PlaneDeviations(double PeakToValley, double RootMeanSquare, int Highest, int Lowest)
{
    internal static PlaneDeviations Of(ReadOnlySpan<double> deviations)
    {
        int highest = 0, lowest = 0;
        double squares = 0;
        for (int k = 0; k < deviations.Length; k++)
        {
            highest = deviations[k] > deviations[highest] ? k : highest;
            lowest = deviations[k] < deviations[lowest] ? k : lowest;
            squares += deviations[k] * deviations[k];
        }

        return new PlaneDeviations(deviations[highest] - deviations[lowest], Math.Sqrt(squares / deviations.Length), highest, lowest);
    }
}
