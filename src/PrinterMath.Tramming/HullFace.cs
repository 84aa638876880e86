namespace PrinterMath.Tramming;

/// <summary>A triangle of a convex hull by the indices of its corners, counterclockwise as seen from outside, with its outward normal in doubles and what that may be off by.</summary>
internal readonly record struct HullFace(int A, int B, int C, double NormalX, double NormalY, double NormalZ, double Doubt);
