namespace PrinterMath.Measurement;

/// <summary>A unit to print in: printed = SI·<paramref name="PerSi"/> + <paramref name="Offset"/>; an uncertainty takes no offset.</summary>
internal readonly record struct DisplayUnit(string Symbol, double PerSi, double Offset = 0)
{
    internal static readonly DisplayUnit[] Temperatures = [new("°C", 1, -273.15), new("K", 1)];

    internal static DisplayUnit Find(DisplayUnit[] units, string symbol)
    {
        foreach (DisplayUnit unit in units)
        {
            if (unit.Symbol == symbol)
            {
                return unit;
            }
        }

        throw new FormatException($"The unit '{symbol}' is not one of {string.Join(", ", units.Select(u => u.Symbol))}.");
    }
}
