namespace PrinterMath.Tramming;

/// <summary>
/// Two parallel planes that enclose all points: through the points A, B, C and through D (face and vertex), or along A–B and along C–D (edge and edge).
/// The normal is that of the rounded points, for pairs whose own points lie on one line.
/// </summary>
internal readonly record struct ZonePair(bool IsEdges, int A, int B, int C, int D, double NormalX, double NormalY, double NormalZ, double Width);
