using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>
/// What is left after round n: Sₙ = S(probe) + S(setting) + ε²·Sₙ₋₁ (for the first, the turns themselves with the response's covariance); what is read is Sₙ + S(probe). ε is the largest relative
/// uncertainty of a learned lead.
/// </summary>
internal sealed class ForecastEstimator(double limit, double width, double depth, double freedom, SlopeCovariance probe, SlopeCovariance response, SlopeCovariance setting, double relativeLead)
{
    private const int MostRounds = 10;
    private const int MostReadings = 1000;

    /// <summary>Upper 5 % point of the standard normal distribution.</summary>
    private const double Guarding = 1.6448536269514722;

    /// <summary>A spread that cannot be told from none has at least this fraction of itself as its uncertainty.</summary>
    private const double Widening = 1 / 1.959963984540054;

    internal PassForecast Forecast(bool isWithin, bool assumesCure)
    {
        Measured<Length> floor = Read(Round(MostRounds, 1, 1), 1);
        if (isWithin)
        {
            return new PassForecast(0, ForecastLimit.None, floor, null, assumesCure);
        }

        for (int round = 1; round <= MostRounds; round++)
        {
            if (Suffices(round, 1, 1))
            {
                return new PassForecast(round, ForecastLimit.None, floor, null, assumesCure);
            }
        }

        int readings = Enumerable.Range(2, MostReadings - 1).FirstOrDefault(n => Suffices(MostRounds, 1.0 / n, 1));
        ForecastLimit what = readings > 0 ? ForecastLimit.ProbeNoise
            : Suffices(MostRounds, 1, 0) || Suffices(MostRounds, 1e-6, 0) ? ForecastLimit.TurnSetting
            : ForecastLimit.Response;
        return new PassForecast(0, what, floor, readings > 0 ? readings : null, assumesCure);
    }

    private static SlopeCovariance Sum(SlopeCovariance a, double times, SlopeCovariance b) =>
        new(a.X + (times * b.X), a.Y + (times * b.Y), a.Both + (times * b.Both));

    private SlopeCovariance Round(int round, double noise, double hand)
    {
        SlopeCovariance fresh = Sum(Sum(new SlopeCovariance(0, 0, 0), noise, probe), hand, setting);
        SlopeCovariance left = Sum(fresh, 1, response);
        for (int i = 1; i < round; i++)
        {
            left = Sum(fresh, relativeLead * relativeLead, left);
        }

        return left;
    }

    private Measured<Length> Read(SlopeCovariance left, double noise) => TiltSpread.OfLeveled(Sum(left, noise, probe), width, depth, freedom);

    private bool Suffices(int round, double noise, double hand)
    {
        double spread = Read(Round(round, noise, hand), noise).SiValue;
        double u = Math.Sqrt(noise * ((width * width * probe.X) + (depth * depth * probe.Y)));
        return spread + (Guarding * Math.Max(u, Math.Min(spread, 2 * u) * Widening)) <= limit;
    }
}
