namespace PrinterMath.Tramming.Tests.Simulation;

public enum NoiseKind
{
    Normal,

    /// <summary>Double exponential: the same standard deviation, heavier tails.</summary>
    Laplace,

    /// <summary>Uniform, as from a coarse scale.</summary>
    Uniform,
}
