namespace PrinterMath.SurfaceMesh;

/// <summary>One covariance of those that the readings leave open: its length, its sill, the variance of a reading of weight one, its system and its share.</summary>
/// <param name="Length">Correlation length, in metres.</param>
/// <param name="Sill">Sill that the system was made with: 1 where it is estimated.</param>
/// <param name="Scale">What the system's variances are to be multiplied by.</param>
/// <param name="NoiseVariance">Variance of a reading of weight one, or of mean weight, in m².</param>
/// <param name="System">The system.</param>
/// <param name="LogOdds">Logarithm of the posterior density, but for a constant.</param>
internal sealed record KrigingNode(double Length, double Sill, double Scale, double NoiseVariance, KrigingSystem System, double LogOdds)
{
    internal double Share { get; init; } = 1;
}
