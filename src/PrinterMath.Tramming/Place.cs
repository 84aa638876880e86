namespace PrinterMath.Tramming;

/// <summary>A place of the bed in metres and the weight it has in a fit.</summary>
internal readonly record struct Place(double X, double Y, double Weight);
