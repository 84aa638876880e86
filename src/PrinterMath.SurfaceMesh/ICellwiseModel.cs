namespace PrinterMath.SurfaceMesh;

/// <summary>A height model that is one polynomial in each cell of a grid, so that a straight line over it is known from a few heights in each cell.</summary>
internal interface ICellwiseModel
{
    /// <summary>Where the polynomial changes along x.</summary>
    GridAxis Columns { get; }

    /// <summary>Where the polynomial changes along y.</summary>
    GridAxis Rows { get; }

    /// <summary>Degree of the height along a straight line in a cell, inside and outside the domain; at most <see cref="BernsteinForm.LargestDegree"/>.</summary>
    int LineDegree { get; }
}
