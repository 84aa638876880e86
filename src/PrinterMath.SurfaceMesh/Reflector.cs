namespace PrinterMath.SurfaceMesh;

/// <summary>Householder's reflection 1 − 2vvᵀ that turns a vector into the direction of its first entry.</summary>
internal static class Reflector
{
    /// <summary>Replaces the vector by v, of length one.</summary>
    /// <returns>What becomes of its first entry; 0, with v zero, for a vector of zeros.</returns>
    internal static double Make(Span<double> vector)
    {
        double length = Math.Sqrt(PositiveDefinite.Dot(vector, vector));
        if (length == 0)
        {
            return 0;
        }

        double target = vector[0] > 0 ? -length : length;
        vector[0] -= target;
        double norm = Math.Sqrt(PositiveDefinite.Dot(vector, vector));
        foreach (ref double entry in vector)
        {
            entry /= norm;
        }

        return target;
    }

    internal static void Apply(ReadOnlySpan<double> v, Span<double> to)
    {
        double twice = 2 * PositiveDefinite.Dot(v, to);
        for (int i = 0; i < v.Length; i++)
        {
            to[i] -= twice * v[i];
        }
    }
}
