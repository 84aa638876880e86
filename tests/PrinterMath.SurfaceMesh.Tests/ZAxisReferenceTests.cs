using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

[Trait("Evidence", "Published")]
public sealed class ZAxisReferenceTests
{
    // Motion along a curve z(s) at constant speed: z̈ = v² z″ (Meriam, Kraige, Dynamics, normal acceleration v²/ρ, for small slopes; from memory). The parabola of a twisted cell
    // at 45°, z″ = 0.12/900 /mm, is cut into equal chords, whose slopes step by z″ l from middle to middle, so the figure is exact.
    [Fact]
    public void Acceleration_over_a_parabola()
    {
        BilinearModel model = BilinearModel.Through(ProbedGrid.FromHeights([0, 0.03], [0, 0.03], [0, 0, 0, 1.2e-4]));
        FollowedMove move = model.Follow(default, SurfacePosition.FromMeters(0.03, 0.03), Length.FromMicrometers(1));
        Assert.InRange(move.Segments.Count, 5, 10);
        ZAxisDemand demand = move.DemandAt(Speed.FromMillimetersPerSecond(150));
        Assert.Equal(150 * 150 * 0.12 / 900, demand.Acceleration.MillimetersPerSecondSquared, 1e-9);

        // The steepest chord is half a chord short of the end, where z′ = z″ L.
        double length = 30 * Math.Sqrt(2), chord = length / move.Segments.Count;
        Assert.Equal(150 * (0.12 / 900) * (length - (chord / 2)), demand.Speed.MillimetersPerSecond, 1e-9);
    }
}
