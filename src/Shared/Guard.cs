using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Runtime.CompilerServices;

namespace PrinterMath;

/// <summary>Argument checks that name the parameter, the value and the rule; compiled into each package.</summary>
[ExcludeFromCodeCoverage]
internal static class Guard
{
    internal static double Finite(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value) ? value : throw Out(name, value, "a finite number");

    internal static double Positive(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value) && value > 0 ? value : throw Out(name, value, "finite and greater than zero");

    internal static double NonNegative(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value) && value >= 0 ? value : throw Out(name, value, "finite and not negative");

    internal static double Between(double value, double lowest, double highest, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value >= lowest && value <= highest
            ? value
            : throw Out(name, value, string.Create(CultureInfo.InvariantCulture, $"from {lowest} to {highest}"));

    internal static double StrictlyBetween(double value, double low, double high, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value > low && value < high
            ? value
            : throw Out(name, value, string.Create(CultureInfo.InvariantCulture, $"greater than {low} and less than {high}"));

    internal static int AtLeast(int value, int least, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value >= least
            ? value
            : throw Out(name, value, string.Create(CultureInfo.InvariantCulture, $"at least {least}"));

    internal static double DegreesOfFreedom(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value >= 1 ? value : throw Out(name, value, "at least 1, or positive infinity");

    internal static void AllFinite(ReadOnlySpan<double> values, [CallerArgumentExpression(nameof(values))] string name = "")
    {
        for (int i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i]))
            {
                throw Out(string.Create(CultureInfo.InvariantCulture, $"{name}[{i}]"), values[i], "a finite number");
            }
        }
    }

    internal static T NotNull<T>([NotNull] T? value, [CallerArgumentExpression(nameof(value))] string name = "")
        where T : class
    {
        ArgumentNullException.ThrowIfNull(value, name);
        return value;
    }

    internal static ArgumentException Refused(string name, string rule) => new(rule, name);

    internal static ArgumentOutOfRangeException Out(string name, object value, string rule) =>
        new(name, value, string.Create(CultureInfo.InvariantCulture, $"{name} is {value}; it must be {rule}."));
}
