using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

public sealed class FilamentDriveTests
{
    private static readonly FilamentDriveData Data = new()
    {
        FilamentDiameter = Melts.Exactly(1.75),
        Friction = Measured.Exact(Force.Zero),
        GearEfficiency = Measured.Exact(1.0),
    };

    // π²·E·I/L² with E = 3.5 GPa, d = 1.75 mm: 39.758 N at 20 mm, which is 16.53 MPa, and 159 N at 10 mm; evaluated outside the project, digits as given. The formula is Euler's.
    [Fact]
    [Trait("Evidence", "Published")]
    public void Buckling_between_wheel_and_guide()
    {
        DriveLimit at20 = Column(20).Weakest;
        Assert.Equal(LimitKind.Buckling, at20.Kind);
        Assert.Equal(39.758, at20.Force.Value.Newtons, 5e-4);
        Assert.Equal(16.53, at20.Force.Value.Newtons / 2.405281875, 5e-3);
        Assert.Equal(159, Column(10).Weakest.Force.Value.Newtons, 0.5);
    }

    [Fact]
    public void A_short_column_yields_first()
    {
        FilamentDrive drive = FilamentDrive.Of(Column(10, Measured.Exact(Pressure.FromMegapascals(50))));
        Assert.Equal(LimitKind.Yield, drive.Weakest.Kind);
        Assert.Equal(50 * 2.405281875, drive.Weakest.Force.Value.Newtons, 1e-6);
    }

    // 0.04 N·m · 3 · 0.9 / 4 mm = 27 N; back again with 2 N of friction: (25 + 2) · 4 mm/(3 · 0.9).
    [Fact]
    public void Torque_there_and_back()
    {
        FilamentDrive drive = FilamentDrive.Of(Data with
        {
            EffectiveRadius = Melts.Exactly(4.0),
            MotorTorque = Measured.Of(Torque.FromNewtonMeters(0.04), Torque.FromNewtonMeters(0.004)),
            GearRatio = 3,
            GearEfficiency = Measured.Exact(0.9),
            Friction = Measured.Exact(Force.FromNewtons(2)),
        });
        Assert.Equal(27, drive.Weakest.Force.SiValue, 1e-9);
        Assert.Equal(2.7, drive.Weakest.Force.SiStandardUncertainty, 1e-9);
        Assert.Equal(0.04, drive.TorqueFor(Measured.Exact(Force.FromNewtons(25))).Result.SiValue, 1e-12);
    }

    [Fact]
    public void The_weakest_stands_first()
    {
        FilamentDrive drive = FilamentDrive.Of(Column(20, null) with
        {
            Grip = Measured.Of(Force.FromNewtons(60), Force.FromNewtons(5)),
            StatedForce = Measured.Exact(Force.FromNewtons(50)),
        });
        Assert.Equal([LimitKind.Buckling, LimitKind.StatedForce, LimitKind.Grip], drive.Limits.Select(limit => limit.Kind));
    }

    [Fact]
    public void Refuses_what_cannot_be()
    {
        Assert.Throws<ArgumentException>(() => FilamentDrive.Of(Data));
        Assert.Throws<ArgumentException>(() => FilamentDrive.Of(Data with { MotorTorque = Measured.Exact(Torque.FromNewtonMeters(0.04)) }));
        Assert.Throws<ArgumentException>(() => FilamentDrive.Of(Data with { FreeLength = Melts.Exactly(20.0) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => FilamentDrive.Of(Data with { Grip = Measured.Exact(Force.Zero) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => FilamentDrive.Of(Data with { GearEfficiency = Measured.Exact(1.2), Grip = Measured.Exact(Force.FromNewtons(60)) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => FilamentDrive.Of(Data with { GearRatio = 0, Grip = Measured.Exact(Force.FromNewtons(60)) }));
        Assert.Throws<InvalidOperationException>(() => FilamentDrive.Of(Data with { FilamentDiameter = default, Grip = Measured.Exact(Force.FromNewtons(60)) }));
        Assert.Throws<InvalidOperationException>(() => Column(20).TorqueFor(Measured.Exact(Force.FromNewtons(25))));
    }

    private static FilamentDrive Column(double millimeters) => FilamentDrive.Of(Column(millimeters, null));

    private static FilamentDriveData Column(double millimeters, Measured<Pressure>? yield) => Data with
    {
        FreeLength = Melts.Exactly(millimeters),
        Modulus = Measured.Exact(Pressure.FromGigapascals(3.5)),
        YieldStress = yield,
    };
}
