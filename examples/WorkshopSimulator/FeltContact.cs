namespace WorkshopSimulator;

/// <summary>Contact felt by hand with a gauge between cold nozzle and cold bed, and what the owner knows of the parts that grow.</summary>
internal static class FeltContact
{
    private const double CoarseStep = 0.05;
    private const double FineStep = 0.01;
    private const int FineHeights = 7;
    private const int Rounds = 5;

    internal static (ContactTruth Truth, IReadOnlyList<WarmedPart> Parts) Draw(SeededRandom random)
    {
        WarmedPart nozzle = Believed("nozzle", random.Whole(20, 35), 19, random.Whole(38, 50) * 5, random, out double nozzleGrowth);
        WarmedPart bed = Believed("bed", random.Whole(25, 50), 23, random.Whole(11, 18) * 5, random, out double bedGrowth);
        double cold = random.Between(-0.3, 0.3);
        return (new ContactTruth(cold, cold + nozzleGrowth + bedGrowth, random.Normal(0.1, 0.005), random.Between(0.003, 0.012)), [nozzle, bed]);
    }

    /// <summary>Down in coarse steps to the first touch, then five rounds of fine steps about it, each from above.</summary>
    internal static IReadOnlyList<ContactTrial> Feel(ContactTruth truth, SeededRandom random)
    {
        var trials = new List<ContactTrial>();
        double height = Math.Ceiling((truth.ColdMillimetres + 0.4) / CoarseStep) * CoarseStep;
        bool touched = false;
        while (!touched)
        {
            touched = Try(height);
            height -= touched ? 0 : CoarseStep;
        }

        double above = height + (CoarseStep / 2);
        for (int i = 0; i < Rounds * FineHeights; i++)
        {
            Try(above + (FineStep * ((FineHeights / 2) - (i % FineHeights))));
        }

        return trials;

        bool Try(double at)
        {
            double below = (truth.ColdMillimetres + truth.GaugeMillimetres - at) / truth.SpreadMillimetres;
            bool touches = random.Between(0, 1) < 1 / (1 + Math.Exp(-below));
            trials.Add(new ContactTrial(Math.Round(at, 4), touches));
            return touches;
        }
    }

    /// <summary>The owner reads lengths and temperatures, and looks expansion up; the truth lies about that as far as is stated.</summary>
    private static WarmedPart Believed(string part, double length, double expansion, double printing, SeededRandom random, out double growth)
    {
        var stated = new WarmedPart(part, length, 1, expansion, 1.5, 21, printing, 2);
        double rise = random.Normal(printing, stated.TemperatureUncertainty) - random.Normal(stated.Measured, stated.TemperatureUncertainty);
        growth = random.Normal(expansion, stated.ExpansionUncertainty) * 1e-6 * random.Normal(length, stated.LengthUncertainty) * rise;
        return stated;
    }
}
