namespace PrinterMath.Tramming.Tests;

/// <summary>Sag of a beam under a point load, over F·L³/(EI), from the eigenfunctions of a vibrating beam: Σφₙ(a)²/kₙ⁴; none of the closed formulas is used.</summary>
internal static class BeamByEnergy
{
    private const int Terms = 60;

    internal static double SagUnderLoad(double place, bool clamped)
    {
        double sum = 0;
        for (int n = 1; n <= Terms; n++)
        {
            double k = clamped ? Wavenumber(n) : n * Math.PI;
            double shape = clamped ? Clamped(k, place) : Math.Sqrt(2) * Math.Sin(k * place);
            sum += shape * shape / Math.Pow(k, 4);
        }

        return sum;
    }

    /// <summary>cos k·cosh k = 1.</summary>
    private static double Wavenumber(int n)
    {
        double k = (n + .5) * Math.PI;
        for (int i = 0; i < 20; i++)
        {
            k -= (Math.Cos(k) - (1 / Math.Cosh(k))) / (-Math.Sin(k) + (Math.Tanh(k) / Math.Cosh(k)));
        }

        return k;
    }

    /// <summary>cosh kx − cos kx − s(sinh kx − sin kx), of unit norm; with decaying exponentials so that it does not lose its digits. Mirrored to the nearer end.</summary>
    private static double Clamped(double k, double place)
    {
        double x = Math.Min(place, 1 - place);
        double s = (Math.Cosh(k) - Math.Cos(k)) / (Math.Sinh(k) - Math.Sin(k));
        return k > 30
            ? Math.Exp(-k * x) - Math.Cos(k * x) + Math.Sin(k * x)
            : Math.Cosh(k * x) - Math.Cos(k * x) - (s * (Math.Sinh(k * x) - Math.Sin(k * x)));
    }
}
