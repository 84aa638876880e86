using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>
/// Plane and saddle fitted together: amplitude t and its variance, the variance of unit weight and degrees of freedom of the joint fit, and the plane that takes the saddle's part a plane can take.
/// Heights are those of the plane fitted alone plus t·p̃, p̃ the saddle less that plane; p̃ is uncorrelated with the plane, so the variances add (Frisch, Waugh 1933, Econometrica 1, 387, from memory).
/// </summary>
internal sealed record TwistFit(
    Finding? Missing, double Amplitude, double Variance, double UnitVariance, double DegreesOfFreedom, TwistPattern Pattern, PrincipalAxes Axes, double Mean, double Along, double Across)
{
    internal static TwistFit Without(Finding missing) => new(missing, 0, 0, 0, 0, default, default, 0, 0, 0);

    /// <summary>p̃ at a place.</summary>
    internal double Rest(double x, double y)
    {
        (double u, double v) = Axes.Local(x, y);
        return Pattern.At(x, y) - Mean - (Along * u) - (Across * v);
    }
}
