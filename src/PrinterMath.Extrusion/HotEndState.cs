namespace PrinterMath.Extrusion;

/// <summary>Numbers of a hot end with a plastic at a temperature, in SI, in the order of the inputs of its budgets.</summary>
/// <param name="HeatedLength">L.</param>
/// <param name="Diameter">d of the filament.</param>
/// <param name="Inlet">Temperature where heating begins.</param>
/// <param name="Block">Temperature of the block.</param>
/// <param name="Soft">Temperature that the centre must reach.</param>
/// <param name="Density">ρ.</param>
/// <param name="Heat">c_p.</param>
/// <param name="Conductivity">k.</param>
/// <param name="Latent">Heat of melting, 0 for none.</param>
/// <param name="Contact">h, 0 for a wall at the temperature of the block.</param>
/// <remarks>Plug flow: Fo = π·α·L/Q. Mean temperature at the exit T_w − (T_w − T_in)·θ_mean(Fo).</remarks>
internal readonly record struct HotEndState(
    double HeatedLength, double Diameter, double Inlet, double Block, double Soft, double Density, double Heat, double Conductivity, double Latent, double Contact)
{
    /// <summary>How many numbers there are.</summary>
    internal const int Count = 10;

    /// <summary>Shortest Fourier number for which a film is computed.</summary>
    private const double Shortest = 1e-4;

    internal double Conductance => Math.PI * Conductivity / (Density * Heat) * HeatedLength;

    internal double Missing => (Block - Soft) / (Block - Inlet);

    internal static HotEndState From(ReadOnlySpan<double> x) => new(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], x[9]);

    /// <summary>Largest flow whose centre gets soft.</summary>
    internal double MeltFlow() => Conductance / Series(0.01).FourierFor(Missing);

    internal double CenterMissing(double flow) => Series(Fourier(flow)).Center(Fourier(flow));

    internal double MeanTemperature(double flow) => Block - ((Block - Inlet) * Series(Fourier(flow)).Mean(Fourier(flow)));

    internal double Power(double flow) => flow * Density * ((Heat * (MeanTemperature(flow) - Inlet)) + Latent);

    private double Fourier(double flow) => Contact > 0 ? Math.Max(Shortest, Conductance / flow) : Conductance / flow;

    private HeatingSeries Series(double from) => Contact > 0 ? HeatingSeries.Film(Contact * Diameter / (2 * Conductivity), from) : HeatingSeries.FixedWall;
}
