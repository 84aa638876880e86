namespace PrinterMath.Resonance;

/// <summary>What is asked of the residual at a frequency.</summary>
internal enum ConditionKind
{
    /// <summary>No residual: two equations.</summary>
    Zero,

    /// <summary>No slope of the complex residual, at a zero: two equations.</summary>
    FlatZero,

    /// <summary>The tolerance: one equation.</summary>
    Level,

    /// <summary>An extreme of the residual: one equation.</summary>
    Extreme,

    /// <summary>The last impulse one damped period after the first: one equation.</summary>
    LastAtDampedPeriod,
}

/// <summary>One demand on the residual.</summary>
/// <param name="Kind">What is asked.</param>
/// <param name="Damping">Damping ratio of the mode.</param>
/// <param name="Frequency">Frequency in units of the design frequency, where it is given.</param>
/// <param name="Unknown">Which of the unknown frequencies it is; negative where it is given.</param>
internal readonly record struct ResidualCondition(ConditionKind Kind, double Damping, double Frequency, int Unknown = -1)
{
    internal static ResidualCondition At(ConditionKind kind, double damping, double frequency) => new(kind, damping, frequency);

    internal static ResidualCondition AtUnknown(ConditionKind kind, double damping, int unknown) => new(kind, damping, 0, unknown);

    internal int Equations => Kind is ConditionKind.Zero or ConditionKind.FlatZero ? 2 : 1;
}
