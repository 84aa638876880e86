using MathNet.Numerics.LinearAlgebra;
using WorkshopSimulator;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>What the second probing should say of the simulated bed, its screws and the turns still to make, in SI.</summary>
/// <remarks>The plane of a stiff plate on its screws is found by MathNet's QR solution, apart from simulator and packages.</remarks>
internal static class PlantedTurns
{
    private const double Millimetre = 1e-3;
    private const double HandTurns = 3.0 / 360;

    internal static void Add(Dictionary<string, double> truth, WorkshopVisit visit, IReadOnlyList<RecordEntry> entries)
    {
        BedTruth bed = visit.BedThen;
        truth["tramming.now.height_spread"] = Spread(bed.SlopeX, bed.SlopeY);
        double[] before = AboutMean(visit.Bed, visit.Screws);
        double[] after = AboutMean(bed, visit.Screws);
        truth["tramming.now.convergence"] = Math.Sqrt(after.Sum(e => e * e) / before.Sum(e => e * e));

        Matrix<double> response = Matrix<double>.Build.Dense(after.Length, after.Length, (i, k) => visit.ScrewMoves[k].MovesMillimetres[i]);
        Vector<double> turns = response.Solve(-Vector<double>.Build.Dense(after));
        for (int k = 0; k < after.Length; k++)
        {
            string name = Name(visit.Screws[k]);
            truth[name + ".lead"] = response[k, k] * Millimetre;
            truth[name + ".height_change"] = turns[k] * response[k, k] * Millimetre;
            truth[name + ".rotation"] = Math.Abs(turns[k]) * 2 * Math.PI;
        }

        AddPredicted(truth, visit, entries, response);
    }

    /// <summary>The advised turns made on the true screws, set by a hand as good as the stated one.</summary>
    private static void AddPredicted(Dictionary<string, double> truth, WorkshopVisit visit, IReadOnlyList<RecordEntry> entries, Matrix<double> response)
    {
        if (!entries.Any(e => e.Name == "tramming.now.predicted_spread"))
        {
            return;
        }

        var hand = new SeededRandom(visit.Seed ^ 0x5DEECE66DUL);
        Vector<double> made = Vector<double>.Build.Dense(visit.Screws.Count, k =>
        {
            double Entry(string what) => entries.First(e => e.Name == Name(visit.Screws[k]) + what).Value;
            return (Entry(".height_change") / Entry(".lead")) + hand.Normal(0, HandTurns);
        });
        Matrix<double> places = Matrix<double>.Build.Dense(visit.Screws.Count, 3, (i, j) => j == 0 ? 1 : j == 1 ? visit.Screws[i].X : visit.Screws[i].Y);
        Vector<double> move = places.QR().Solve(response * made);
        truth["tramming.now.predicted_spread"] = Spread(visit.BedThen.SlopeX + move[1], visit.BedThen.SlopeY + move[2]);
    }

    private static double Spread(double slopeX, double slopeY) => 2 * BedTruth.Reach * Millimetre * (Math.Abs(slopeX) + Math.Abs(slopeY));

    private static double[] AboutMean(BedTruth bed, IReadOnlyList<BedScrew> screws)
    {
        double[] heights = [.. screws.Select(screw => (bed.SlopeX * screw.X) + (bed.SlopeY * screw.Y))];
        return [.. heights.Select(height => height - heights.Average())];
    }

    private static string Name(BedScrew screw) => "tramming.now.screw." + screw.Name.Replace(' ', '_');
}
