using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>Writes a value rounded by its uncertainty, as JCGM 100:2008 7.2 does.</summary>
internal static class MeasuredText
{
    internal static string Write(
        double si, double standardUncertainty, double degreesOfFreedom, DisplayUnit[] units, string? format, IFormatProvider? provider)
    {
        (char style, int? number, DisplayUnit unit) = Parse(format, units);
        double value = (si * unit.PerSi) + unit.Offset;
        double uncertainty = standardUncertainty * unit.PerSi;
        if (uncertainty == 0)
        {
            return WithUnit(value.ToString("G10", Numbers(provider)), unit) + (style == 'V' ? string.Empty : " (exact)");
        }

        if (style == 'U')
        {
            double k = number is { } percent ? StudentDistribution.CoverageFactor(percent / 100.0, degreesOfFreedom) : 2;
            return Expanded(value, uncertainty, k, number is { } p ? $", {p} %" : string.Empty, unit, provider);
        }

        RoundedNumber rounded = RoundedNumber.By(value, uncertainty, number);
        string text = style == 'V' ? rounded.Value(Numbers(provider)) : rounded.Concise(Numbers(provider));
        return WithUnit(text, unit);
    }

    internal static string WriteExpanded(
        double si, double standardUncertainty, double k, double coverage, DisplayUnit[] units, string? unitSymbol, IFormatProvider? provider)
    {
        DisplayUnit unit = unitSymbol is null ? units[0] : DisplayUnit.Find(units, unitSymbol);
        double value = (si * unit.PerSi) + unit.Offset;
        string percent = string.Create(Numbers(provider), $", {coverage * 100:0.##} %");
        return standardUncertainty == 0
            ? WithUnit(value.ToString("G10", Numbers(provider)), unit) + " (exact)"
            : Expanded(value, standardUncertainty * unit.PerSi, k, percent, unit, provider);
    }

    private static string Expanded(double value, double uncertainty, double k, string coverage, DisplayUnit unit, IFormatProvider? provider)
    {
        NumberFormatInfo numbers = Numbers(provider);
        RoundedNumber rounded = RoundedNumber.By(value, k * uncertainty, null);
        string body = $"({rounded.Value(numbers)} ± {rounded.Uncertainty(numbers)})";
        return WithUnit(body, unit) + $", k = {k.ToString("0.##", numbers)}" + coverage;
    }

    private static (char Style, int? Number, DisplayUnit Unit) Parse(string? format, DisplayUnit[] units)
    {
        if (string.IsNullOrEmpty(format) || format == "G")
        {
            return ('S', null, units[0]);
        }

        int blank = format.IndexOf(' ', StringComparison.Ordinal);
        string style = blank < 0 ? format : format[..blank];
        DisplayUnit unit = blank < 0 ? units[0] : DisplayUnit.Find(units, format[(blank + 1)..]);
        char letter = style.Length == 0 ? 'S' : style[0];
        int? number = null;
        if (style.Length > 1)
        {
            number = int.TryParse(style.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out int parsed) ? parsed : -1;
        }

        bool known = letter switch
        {
            'S' or 'V' => number is null or (>= 1 and <= 9),
            'U' => number is null or (>= 1 and <= 99),
            _ => false,
        };
        return known
            ? (letter, number, unit)
            : throw new FormatException($"The format '{format}' is not one of S, S1 to S9, V, V1 to V9, U, U1 to U99, each with an optional unit after a blank.");
    }

    private static NumberFormatInfo Numbers(IFormatProvider? provider) => NumberFormatInfo.GetInstance(provider ?? CultureInfo.InvariantCulture);

    private static string WithUnit(string text, DisplayUnit unit) =>
        unit.Symbol switch
        {
            "" => text,
            "°" => text + "°",
            _ => text + " " + unit.Symbol,
        };
}
