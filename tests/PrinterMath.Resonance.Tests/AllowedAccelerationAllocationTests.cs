using UnitsNet;

namespace PrinterMath.Resonance.Tests;

public sealed class AllowedAccelerationAllocationTests
{
    private static readonly ImpulseSequence Sequence = ImpulseSequence.ZeroVibrationDerivative(Frequency.FromHertz(45), 0.06);

    [Fact]
    public void An_allowed_acceleration_and_its_deviation_allocate_nothing() => Allocation.None(i =>
        AllowedAcceleration.ForDeviation(Sequence, Length.FromMicrometers(10 + i)).MetersPerSecondSquared
        + AllowedAcceleration.DeviationAt(Sequence, Acceleration.FromMetersPerSecondSquared(i)).Meters);
}
