using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>A number inside a <see cref="Finding"/>: name, value and UCUM unit.</summary>
/// <remarks>Equality by value; the default is an unnamed zero.</remarks>
/// <param name="Name">Stable name, lower camel case.</param>
/// <param name="Value">The number in <paramref name="UcumUnit"/>.</param>
/// <param name="UcumUnit">Unit in the Unified Code for Units of Measure; <c>1</c> for a count or a ratio.</param>
public readonly record struct FindingNumber(string Name, double Value, string UcumUnit)
{
    /// <summary>Invariant text.</summary>
    /// <returns>Name, value and unit.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Name} = {Value:G6}{(UcumUnit == "1" ? string.Empty : " " + UcumUnit)}");
}
