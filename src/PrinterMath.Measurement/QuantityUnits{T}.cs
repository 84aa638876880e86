namespace PrinterMath.Measurement;

/// <summary>How one kind of quantity is turned into its coherent SI number and back, and the units it may be printed in.</summary>
internal sealed class QuantityUnits<T>(string ucum, Func<T, double> toSi, Func<double, T> fromSi, params DisplayUnit[] display) : IQuantityUnits
    where T : struct
{
    private static readonly QuantityUnits<T>? Found = QuantityTable.Find<T>();

    internal static QuantityUnits<T> Known =>
        Found ?? throw new NotSupportedException(
            $"{typeof(T).Name} is not a quantity that Measured<T> carries. Known are: {QuantityTable.Names}. For a temperature use MeasuredTemperature.");

    public string Ucum { get; } = ucum;

    /// <summary>The first is the one used when none is asked for.</summary>
    public DisplayUnit[] Display { get; } = display;

    internal double ToSi(T quantity) => toSi(quantity);

    internal T FromSi(double si) => fromSi(si);
}
