using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>What a height model computes, in metres.</summary>
internal abstract class HeightSource
{
    private protected HeightSource(SurfaceRectangle domain, HeightModelOptions? options, IEnumerable<Finding> findings)
    {
        Domain = domain;
        Outside = options?.Outside ?? OutsideRule.Refuse;
        Findings = Array.AsReadOnly<Finding>([.. findings]);
        if (!Enum.IsDefined(Outside))
        {
            throw Guard.Out(nameof(options), Outside, "one of the named rules");
        }
    }

    internal SurfaceRectangle Domain { get; }

    internal OutsideRule Outside { get; }

    internal IReadOnlyList<Finding> Findings { get; }

    internal abstract double Estimate(double x, double y);

    internal abstract SurfaceGradient Gradient(double x, double y);

    internal abstract bool TryMeasure(double x, double y, out Measured<Length> height);

    internal abstract double InterpolationError(double x, double y);

    internal abstract void Heights(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs);

    /// <summary>The coordinate itself, or the border next to it where the rule allows the outside.</summary>
    private protected double InsideX(double x) => Inside(x, Domain.LeftMeters, Domain.RightMeters, nameof(x));

    /// <inheritdoc cref="InsideX"/>
    private protected double InsideY(double y) => Inside(y, Domain.FrontMeters, Domain.RearMeters, nameof(y));

    private double Inside(double value, double first, double last, string name) =>
        value >= first && value <= last ? value
        : !double.IsFinite(value) ? throw Guard.Out(name, value, "a finite number of metres")
        : Outside == OutsideRule.Refuse ? throw Guard.Out(name, value, FormattableString.Invariant($"within the domain, {first} to {last} m"))
        : Math.Clamp(value, first, last);
}
