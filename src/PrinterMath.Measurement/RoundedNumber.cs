using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>
/// A value and its uncertainty rounded to the same place. Two digits of the uncertainty when its first digit is 1 or 2, else
/// one, unless a number of digits is asked for.
/// </summary>
internal readonly struct RoundedNumber
{
    private const int LargestPlainExponent = 7;
    private readonly double _value;
    private readonly double _uncertainty;
    private readonly int _decimals;
    private readonly int _exponent;

    private RoundedNumber(double value, double uncertainty, int decimals, int exponent)
    {
        _value = value;
        _uncertainty = uncertainty;
        _decimals = decimals;
        _exponent = exponent;
    }

    internal static RoundedNumber By(double value, double uncertainty, int? digits)
    {
        int place = LastPlace(uncertainty, digits);
        int leading = (int)Math.Floor(Math.Log10(Math.Max(Math.Abs(value), uncertainty)));
        bool scientific = leading >= LargestPlainExponent || place < -LargestPlainExponent;
        int exponent = scientific ? leading : 0;
        double scale = Math.Pow(10, exponent);
        return new RoundedNumber(value / scale, uncertainty / scale, exponent - place, exponent);
    }

    internal string Value(NumberFormatInfo numbers) => Rounded(_value, numbers) + Power();

    internal string Uncertainty(NumberFormatInfo numbers) => Rounded(_uncertainty, numbers) + Power();

    /// <summary>12.34(5): the uncertainty in units of the last digit, or written out when it reaches past the point.</summary>
    internal string Concise(NumberFormatInfo numbers)
    {
        string uncertainty = Rounded(_uncertainty, numbers);
        bool insideFraction = _decimals > 0 && !(Math.Round(_uncertainty, Math.Min(_decimals, 15)) >= 1);
        if (insideFraction)
        {
            uncertainty = uncertainty[(uncertainty.IndexOf(numbers.NumberDecimalSeparator, StringComparison.Ordinal) + numbers.NumberDecimalSeparator.Length)..].TrimStart('0');
        }

        return $"{Rounded(_value, numbers)}({uncertainty}){Power()}";
    }

    /// <summary>Exponent of ten of the last digit kept.</summary>
    private static int LastPlace(double uncertainty, int? digits)
    {
        int exponent = (int)Math.Floor(Math.Log10(uncertainty));
        double twoDigits = Math.Round(uncertainty / Math.Pow(10, exponent - 1));
        if (twoDigits >= 100)
        {
            exponent++;
            twoDigits = 10;
        }

        // One digit of 95 to 99 rounds up to a leading 1, which keeps two.
        int kept = digits ?? (twoDigits is < 30 or >= 95 ? 2 : 1);
        bool carries = digits is null && twoDigits >= 95;
        return exponent - kept + 1 + (carries ? 1 : 0);
    }

    private string Rounded(double number, NumberFormatInfo numbers)
    {
        if (_decimals >= 0)
        {
            return Unsigned(number.ToString("F" + _decimals.ToString(CultureInfo.InvariantCulture), numbers), numbers);
        }

        double unit = Math.Pow(10, -_decimals);
        return Unsigned((Math.Round(number / unit) * unit).ToString("F0", numbers), numbers);
    }

    /// <summary>A value that rounds to zero carries no sign.</summary>
    private static string Unsigned(string text, NumberFormatInfo numbers) =>
        text.StartsWith(numbers.NegativeSign, StringComparison.Ordinal) && text.AsSpan(numbers.NegativeSign.Length).IndexOfAnyInRange('1', '9') < 0
            ? text[numbers.NegativeSign.Length..]
            : text;

    private string Power() => _exponent == 0 ? string.Empty : $"E{_exponent.ToString(CultureInfo.InvariantCulture)}";
}
