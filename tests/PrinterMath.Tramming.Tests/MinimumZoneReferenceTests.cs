using PrinterMath.Measurement;

namespace PrinterMath.Tramming.Tests;

public class MinimumZoneReferenceTests
{
    // Source: P25, a set made for this purpose; zone by SciPy 1.10.1 (linprog) and by an exhaustive search over faces and pairs of edges, which agree. Exact decimals; 10 printed digits.
    [Fact]
    public void ZoneOf25PointsAgreesWithALinearProgram()
    {
        MinimumZone inZ = MinimumZone.InZ(ReferenceBeds.P25());
        MinimumZone orthogonal = MinimumZone.Orthogonal(ReferenceBeds.P25());

        Assert.Equal(.0396, inZ.Width.Millimeters, 1e-13); // rounding
        Assert.Equal(8.32e-4, -inZ.NormalX / inZ.NormalZ, 1e-13);
        Assert.Equal(-5.24e-4, -inZ.NormalY / inZ.NormalZ, 1e-13);
        Assert.Equal(.0998, inZ.HeightAt(UnitsNet.Length.Zero, UnitsNet.Length.Zero).Millimeters, 1e-13);
        Assert.Equal(.0395999809, orthogonal.Width.Millimeters, 5e-11);
    }

    // Source: the 800 readings of the plate; zone by SciPy (linprog, HiGHS) 3.9253 um, four decimals; the vendor's machine states a least-squares flatness of 4.406 um, which it must not exceed.
    [Fact]
    public void ZoneOfThePlateAgreesWithALinearProgram()
    {
        Assert.Equal(3.9253, MinimumZone.InZ(ReferenceBeds.Plate()).Width.Micrometers, 5e-5);
        Assert.Equal(MinimumZone.InZ(ReferenceBeds.Plate()).Width.Micrometers, MinimumZone.Orthogonal(ReferenceBeds.Plate()).Width.Micrometers, 2e-7); // tilt 2.5e-4: 3e-8 of 3.9
    }

    // Source: ISO 1101 by its definition: a cube of edge a has width a.
    [Fact]
    public void ACubeIsAsWideAsItsEdge()
    {
        ProbePoint[] cube = [.. from x in new[] { 0, .1 } from y in new[] { 0, .1 } from z in new[] { 0, .1 } select ProbePoint.FromMeters(x, y, z)];
        Assert.Equal(.1, MinimumZone.Orthogonal(cube).Width.Meters, 1e-15);
        Assert.Equal(.1, MinimumZone.InZ(cube).Width.Meters, 1e-15);
    }
}
