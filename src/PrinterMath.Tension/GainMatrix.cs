namespace PrinterMath.Tension;

/// <summary>ΔT = G·Δn of two belts and two tensioners, in newtons a turn: AB is what tensioner B does to belt A.</summary>
internal readonly record struct GainMatrix(double AA, double AB, double BA, double BB)
{
    internal double Determinant => (AA * BB) - (AB * BA);

    /// <summary>n = G⁻¹·ΔT.</summary>
    internal (double A, double B) Solve(double a, double b) => (((BB * a) - (AB * b)) / Determinant, ((AA * b) - (BA * a)) / Determinant);

    internal (double A, double B) Times(double a, double b) => ((AA * a) + (AB * b), (BA * a) + (BB * b));
}
