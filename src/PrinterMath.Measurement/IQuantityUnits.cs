namespace PrinterMath.Measurement;

/// <summary>The units of a quantity whose type is not at hand.</summary>
internal interface IQuantityUnits
{
    string Ucum { get; }

    DisplayUnit[] Display { get; }
}
