using FsCheck;
using FsCheck.Fluent;

namespace PrinterMath.Measurement.Tests;

/// <summary>Between 5 and 40 readings on a fine lattice, so that shifts and scales of them are exact or nearly so.</summary>
public sealed class ReadingSet(double[] values)
{
    public double[] Values { get; } = values;

    public override string ToString() => string.Join(", ", Values);
}

/// <summary>A design of 1 to 4 columns and 6 to 30 rows, with coefficients (intercept first) and noise.</summary>
public sealed class PlantedModel(int columns, double[] design, double[] coefficients, double[] noise)
{
    public int Columns { get; } = columns;

    public int Rows => Noise.Length;

    public double[] Design { get; } = design;

    public double[] Coefficients { get; } = coefficients;

    public double[] Noise { get; } = noise;

    public double[] Exact => [.. Enumerable.Range(0, Rows).Select(i =>
        Coefficients[0] + Enumerable.Range(0, Columns).Sum(j => Coefficients[j + 1] * Design[(i * Columns) + j]))];

    public double[] Noisy => [.. Exact.Zip(Noise, (y, e) => y + e)];

    public override string ToString() => $"{Columns} columns, [{string.Join(", ", Design)}], b = [{string.Join(", ", Coefficients)}], e = [{string.Join(", ", Noise)}]";
}

public static class ReadingArbitraries
{
    public static Arbitrary<ReadingSet> Sets() => Arb.From(
        from n in Gen.Choose(5, 40)
        from values in Gen.Choose(-4096, 4096).ArrayOf(n)
        select new ReadingSet([.. values.Select(v => v / 64.0)]));

    public static Arbitrary<PlantedModel> Models() => Arb.From(
        from columns in Gen.Choose(1, 4)
        from rows in Gen.Choose(columns + 5, 30)
        from design in Gen.Choose(-1000, 1000).ArrayOf(rows * columns)
        from coefficients in Gen.Choose(-100, 100).ArrayOf(columns + 1)
        from noise in Gen.Choose(-500, 500).ArrayOf(rows)
        select new PlantedModel(columns, [.. design.Select(x => x / 8.0)], [.. coefficients.Select(x => x / 4.0)], [.. noise.Select(x => x / 128.0)]));
}
