using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>How a surface's shape is taken apart.</summary>
public sealed record ShapeOptions
{
    /// <summary>The rectangle on which the terms are defined; points may lie outside.</summary>
    /// <value>Null: the smallest that holds all points.</value>
    public SurfaceRectangle? Rectangle { get; init; }

    /// <summary>Standard deviation of one height reading, for points that carry no uncertainty of their own; greater than zero.</summary>
    /// <value>Null: unknown; uncertainties then come from what the terms leave over.</value>
    public Length? Repeatability { get; init; }

    /// <summary>Degrees of freedom behind <see cref="Repeatability"/>.</summary>
    /// <value>Infinite. 1 or more.</value>
    public double RepeatabilityDegreesOfFreedom { get; init; } = double.PositiveInfinity;

    /// <summary>A term is significant when chance alone would give one as large with at most this probability.</summary>
    /// <value>0.05. Greater than 0 and less than 1.</value>
    public double SignificanceLevel { get; init; } = 0.05;
}
