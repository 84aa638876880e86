namespace PrinterMath.Tramming.Tests;

[Trait("Evidence", "Published")]
public class ThreadPitchReferenceTests
{
    // Source: ISO 261:1998 coarse pitches, as printed in public metric thread tables. Exact decimals: rounding only.
    [Theory]
    [InlineData("M2", 0.40)]
    [InlineData("M2.5", 0.45)]
    [InlineData("M3", 0.50)]
    [InlineData("M4", 0.70)]
    [InlineData("M5", 0.80)]
    [InlineData("M6", 1.00)]
    [InlineData("M8", 1.25)]
    public void CoarsePitchesAgreeWithIso261(string designation, double millimeters) =>
        Assert.Equal(millimeters, ThreadPitch.IsoCoarse(designation).Millimeters, 1e-12);

    [Fact]
    public void EveryDesignationHasAPitch() =>
        Assert.Equal(7, ThreadPitch.Designations.Count(designation => ThreadPitch.IsoCoarse(designation).Millimeters > 0));
}
