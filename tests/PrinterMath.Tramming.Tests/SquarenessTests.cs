using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class SquarenessTests
{
    private static Measured<Length> Read(double mm, double u = .05) => Measured.Of(Mm(mm), Mm(u));

    [Fact]
    public void DiagonalsGiveTheAngle()
    {
        // (141.5^2 - 141.3^2)/(4 * 100 * 100) = 1.414e-3 rad; u = sqrt((2 * 141.5 * .05)^2 + (2 * 141.3 * .05)^2)/40000
        Squareness s = Squareness.FromDiagonals(Read(100), Read(100), Read(141.5), Read(141.3));

        Assert.Equal(Math.Asin(1.414e-3), s.Deviation.SiValue, 1e-12);
        Assert.Equal(.0810163, s.Deviation.Value.Degrees, 1e-7);
        Assert.Equal(Math.Sqrt(Math.Pow(14.15, 2) + Math.Pow(14.13, 2)) / 40000, s.Deviation.SiStandardUncertainty, 1e-8); // sides add 1e-3 of it, in squares
        Assert.Equal(s.Deviation.SiValue, Squareness.FromDiagonals(Read(141.5), Read(141.3)).Deviation.SiValue, 4.4e-7); // these diagonals close sides of 100 only to 3.02e-4
        Assert.Equal(Conclusion.Undecided, s.Judge(Tolerance.Around(Angle.Zero, Angle.FromDegrees(.09))).Conclusion);
    }

    [Fact]
    public void ACommonScaleErrorCancels()
    {
        Squareness s = Squareness.FromDiagonals(Read(100 * 1.01), Read(80 * 1.01), Read(130 * 1.01), Read(126.2 * 1.01));
        Assert.Equal(Squareness.FromDiagonals(Read(100), Read(80), Read(130), Read(126.2)).Deviation.SiValue, s.Deviation.SiValue, 1e-15);
    }

    [Fact]
    public void ASquareAndAnIndicatorGiveTheAngle()
    {
        Squareness s = Squareness.FromSquare(Read(.1, .01), Read(100, .1), Measured.Of(Angle.FromRadians(-2e-4), Angle.FromRadians(1e-4)));

        Assert.Equal(Math.Atan(1e-3) - 2e-4, s.Deviation.SiValue, 1e-15);
        Assert.Equal(Math.Sqrt(2) * 1e-4, s.Deviation.SiStandardUncertainty, 1e-8); // 0.01/100 and the square's 1e-4; the travel adds 1e-6
    }

    [Property(MaxTest = 300)]
    public Property APlantedAngleIsFoundAndItsCorrectionUndoesIt() => Prop.ForAll(
        Arb.From(from e in Gen.Choose(-5000, 5000) from a in Gen.Choose(50, 300) from b in Gen.Choose(50, 300) select (e * 1e-6, a, b)),
        planted =>
        {
            (double e, int a, int b) = planted;

            // corners of a figure driven by axes that meet at 90 deg - e: by complex numbers, x axis along the real one
            (double x, double y) = (b * Math.Cos((Math.PI / 2) - e), b * Math.Sin((Math.PI / 2) - e));
            Squareness s = Squareness.FromDiagonals(Read(a), Read(b), Read(double.Hypot(a + x, y)), Read(double.Hypot(x - a, y)));
            (Length cx, Length cy) = s.Shear.Command(Mm(a), Mm(b));
            (double lx, double ly) = (cx.Millimeters + (cy.Millimeters * x / b), cy.Millimeters * y / b); // where the machine goes
            (Length backX, Length backY) = s.Shear.Landing(cx, cy);
            return Math.Abs(s.Deviation.SiValue - e) < 1e-12 // rounding of squares of 4e5: 1e-16 * 4e5/(4ab)
                && Math.Abs(lx - a) < 1e-9 && Math.Abs(ly - b) < 1e-9
                && Math.Abs(backX.Millimeters - a) < 1e-10 && Math.Abs(backY.Millimeters - b) < 1e-10;
        });

    [Fact]
    public void SpansAreShearedInPlaceAndNothingIsAllocated()
    {
        AxisShear shear = AxisShear.For(Angle.FromRadians(.01));
        double[] x = [100, 0], y = [100, 50];
        shear.Command(x, y);
        (Length X, Length Y) one = shear.Command(Mm(100), Mm(100));

        Assert.Equal(one.X.Millimeters, x[0], 1e-10);
        Assert.Equal(one.Y.Millimeters, y[0], 1e-10);
        Assert.True(x[1] < 0); // the y axis leans towards +x, so the command goes towards -x
        Assert.Equal(default, AxisShear.For(Angle.Zero));
        Allocation.None(i =>
        {
            shear.Command(x, y);
            return x[0] % 1;
        });
    }

    [Fact]
    public void CallersMistakesAreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Squareness.FromDiagonals(Read(100), Read(100), Read(1414), Read(1413))); // a unit slipped
        Assert.Throws<ArgumentOutOfRangeException>(() => Squareness.FromDiagonals(Read(-1), Read(100), Read(141), Read(141)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Squareness.FromSquare(Read(1), Read(-5), Measured.Exact(Angle.Zero)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Squareness.FromDiagonals(Read(141), Read(.141))); // the same slip, without sides
        Assert.Throws<ArgumentOutOfRangeException>(() => Squareness.FromSquare(Read(100), Read(.1), Measured.Exact(Angle.Zero)));
        Assert.Throws<ArgumentOutOfRangeException>(() => PartLean.Of(Read(300), Read(0), Read(200)));
        Assert.Throws<InvalidOperationException>(() => Squareness.FromDiagonals(default, Read(141)));
        Assert.Throws<ArgumentOutOfRangeException>(() => AxisShear.For(Angle.FromDegrees(40)));
        Assert.Throws<ArgumentException>(() => AxisShear.For(Angle.Zero).Command(new double[2], new double[3]));
    }

    [Fact]
    public void ALeanHasSignsAndADirectionWhereItIsSignificant()
    {
        PartLean lean = PartLean.Of(Read(.3, .02), Read(-.4, .02), Read(200, .1));

        Assert.Equal(Math.Atan(.3 / 200), lean.AlongX.SiValue, 1e-15);
        Assert.Equal(-Math.Atan(.4 / 200), lean.AlongY.SiValue, 1e-15);
        Assert.Equal(1e-4, lean.AlongX.SiStandardUncertainty, 1e-8); // .02/200
        Assert.True(lean.TryGetLean(out Measured<Angle> whole, out Measured<Angle> direction));
        Assert.Equal(Math.Atan(.5 / 200), whole.SiValue, 1e-15);
        Assert.Equal(Math.Atan2(-.4, .3), direction.SiValue, 1e-15);
        Assert.Equal(.02 / .5, direction.SiStandardUncertainty, 1e-12);
        Assert.False(PartLean.Of(Read(.03, .02), Read(.02, .02), Read(200)).TryGetLean(out _, out _));
        Assert.Throws<ArgumentOutOfRangeException>(() => PartLean.Of(Read(0), Read(0), Read(-1)));
    }
}
