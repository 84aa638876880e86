namespace PrinterMath.Tramming;

/// <summary>A triangle of a convex hull by the indices of its corners, counterclockwise as seen from outside.</summary>
internal readonly record struct HullFace(int A, int B, int C);
