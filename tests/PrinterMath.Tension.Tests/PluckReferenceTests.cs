using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>
/// Recorded strings. Reference: column f0_fit_hz of data/audio/manifest.csv, a SciPy fit of f_n = n·f0·√(1 + B·n²) to the partials of the whole file,
/// made outside this project; provenance and licences in data/audio/README.md.
/// </summary>
[Trait("Evidence", "Published")]
public class PluckReferenceTests
{
    // 20 cents: the plucks glide by up to 30 cents within a file, and the reference weighs the time differently. An octave error would be 1200 cents.
    private const double MostCents = 20;

    [Theory]
    [MemberData(nameof(RecordedPlucks.Pitched), MemberType = typeof(RecordedPlucks))]
    public void RecordedStringIsHeard(string file, double f0, double inharmonicity)
    {
        PluckReading reading = Pluck.Read(RiffWave.Read(file));
        Assert.True(reading.TryGetFundamental(out Measured<Frequency> heard), $"{file}: {reading}");
        double cents = Cents(reading.StringFundamental.SiValue, f0);
        Assert.True(Math.Abs(cents) < MostCents, $"{file}: {reading.StringFundamental}, {cents:F2} cents from {f0} Hz (B = {inharmonicity})");
        Assert.InRange(heard.SiValue / reading.StringFundamental.SiValue, 1, 1.001);
        Assert.True(heard.SiStandardUncertainty > 0);
    }

    // The typical file glides by a few cents; 3 cents is a tenth of what a belt's own uncertainty of linear density (5 %) leaves in frequency (43 cents).
    [Fact]
    public void MedianDeviationIsBelowThreeCents()
    {
        List<double> cents = [];
        foreach (object[] row in (IEnumerable<object[]>)RecordedPlucks.Pitched)
        {
            cents.Add(Math.Abs(Cents(Pluck.Read(RiffWave.Read((string)row[0])).StringFundamental.SiValue, (double)row[1])));
        }

        cents.Sort();
        Assert.Equal(24, cents.Count);
        Assert.True(cents[12] < 3, $"median {cents[12]:F2} cents");
        Assert.True(cents[22] < 10, $"all but one below {cents[22]:F2} cents");
    }

    [Theory]
    [MemberData(nameof(RecordedPlucks.Unpitched), MemberType = typeof(RecordedPlucks))]
    public void KnockIsRefused(string file)
    {
        PluckReading reading = Pluck.Read(RiffWave.Read(file));
        Assert.False(reading.TryGetFundamental(out _), $"{file}: {reading}");
        Assert.Contains(reading.Findings, f => f.Severity == FindingSeverity.Blocking);
        Assert.Throws<IndeterminateException>(() => reading.Fundamental);
    }

    private static double Cents(double frequency, double reference) => 1200 * Math.Log2(frequency / reference);
}
