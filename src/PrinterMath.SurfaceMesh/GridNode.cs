namespace PrinterMath.SurfaceMesh;

/// <summary>A node of a grid: its column counted along x and its row counted along y, both from 0.</summary>
/// <remarks>Equality by value; the default is the node at the smallest x and y.</remarks>
/// <param name="Column">Column, counted from the smallest x.</param>
/// <param name="Row">Row, counted from the smallest y.</param>
public readonly record struct GridNode(int Column, int Row);
