using System.Globalization;

namespace CommissioningPass.Inputs;

/// <summary>A row of a table: fields by column name, numbers checked.</summary>
internal sealed class CsvRow(string file, int line, string[] columns, string[] fields)
{
    internal int Line { get; } = line;

    internal string Text(string column)
    {
        string field = Field(column);
        return field.Length > 0 ? field : throw Fault($"{column} is empty.");
    }

    /// <summary>One of a few words.</summary>
    internal string OneOf(string column, params string[] allowed)
    {
        string text = Text(column);
        return allowed.Contains(text, StringComparer.Ordinal)
            ? text
            : throw Fault($"{column} is '{text}'; it is one of {string.Join(", ", allowed)}.");
    }

    internal double Number(string column) => OptionalNumber(column) ?? throw Fault($"{column} is empty; a number is needed.");

    internal double? OptionalNumber(string column)
    {
        string field = Field(column);
        if (field.Length == 0)
        {
            return null;
        }

        if (double.TryParse(field, NumberStyles.Float, CultureInfo.InvariantCulture, out double number))
        {
            return double.IsFinite(number) ? number : throw Fault($"{column} is '{field}'; a finite number is needed.");
        }

        throw Fault(field.Contains(',', StringComparison.Ordinal)
            ? $"{column} is '{field}'; numbers have a decimal point, not a comma."
            : $"{column} is '{field}'; a number is needed.");
    }

    /// <summary>A number inside a range in which a sound reading lies; far outside it the unit is most likely wrong.</summary>
    internal double Plausible(string name, double number, double lowest, double highest, string unit) =>
        number >= lowest && number <= highest
            ? number
            : throw Fault(FormattableString.Invariant($"{name} is {number:G6} {unit}; from {lowest:G6} to {highest:G6} {unit} is expected. Is the unit right?"));

    internal InputException Fault(string fault) => new(file, Line, fault);

    private string Field(string column)
    {
        int index = Array.IndexOf(columns, column);
        return index < 0 ? string.Empty : fields[index];
    }
}
