using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace CommissioningPass.Inputs;

/// <summary>A comma-separated file (RFC 4180) with a header, read whole and checked: columns, fields a row, no quotes astray.</summary>
internal sealed class CsvTable
{
    private readonly string[] _columns;

    private CsvTable(string file, string[] columns, IReadOnlyList<CsvRow> rows)
    {
        File = file;
        _columns = columns;
        Rows = rows;
    }

    internal string File { get; }

    internal IReadOnlyList<CsvRow> Rows { get; }

    internal bool Has(string column) => _columns.Contains(column, StringComparer.Ordinal);

    internal static CsvTable Read(string folder, string file, string[] required, params string[] optional)
    {
        string path = Path.Combine(folder, file);
        if (!System.IO.File.Exists(path))
        {
            throw new InputException(file, null, $"the file is missing; it needs the columns {string.Join(',', required)}.");
        }

        try
        {
            using var text = new StreamReader(path);
            return Read(text, file, required, optional);
        }
        catch (BadDataException fault)
        {
            throw new InputException(file, fault.Context?.Parser?.RawRow, "a quotation mark stands where RFC 4180 allows none.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new InputException(file, null, "the file cannot be read; " + fault.Message);
        }
    }

    private static CsvTable Read(StreamReader text, string file, string[] required, string[] optional)
    {
        var configuration = new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            HasHeaderRecord = false,
            IgnoreBlankLines = true,
            TrimOptions = TrimOptions.Trim,
        };
        using var parser = new CsvParser(text, configuration);
        if (!parser.Read())
        {
            throw new InputException(file, null, $"the file is empty; its first line must name the columns {string.Join(',', required)}.");
        }

        string[] columns = Header(file, parser, required, optional);
        var rows = new List<CsvRow>();
        int next = parser.RawRow + 1;
        while (parser.Read())
        {
            int line = Math.Max(next, parser.RawRow - parser.RawRecord.TrimEnd('\r', '\n').Count(c => c == '\n'));
            next = parser.RawRow + 1;
            if (parser.Count != columns.Length)
            {
                string hint = parser.Count > columns.Length ? "; is a number written with a decimal comma instead of a point?" : ".";
                throw new InputException(file, line, FormattableString.Invariant($"there are {parser.Count} fields where the header names {columns.Length} columns{hint}"));
            }

            rows.Add(new CsvRow(file, line, columns, parser.Record!));
        }

        return rows.Count > 0
            ? new CsvTable(file, columns, rows)
            : throw new InputException(file, null, "there is no row below the header.");
    }

    private static string[] Header(string file, CsvParser parser, string[] required, string[] optional)
    {
        string[] columns = [.. parser.Record!];
        string known = string.Join(',', required) + (optional.Length > 0 ? $" and, if wanted, {string.Join(',', optional)}" : string.Empty);
        string? missing = Array.Find(required, name => !columns.Contains(name, StringComparer.Ordinal));
        if (missing is not null)
        {
            string hint = columns.Length == 1 && columns[0].AsSpan().ContainsAny(';', '\t') ? " Columns are separated by commas." : string.Empty;
            throw new InputException(file, parser.RawRow, $"the column {missing} is missing; the columns are {known}.{hint}");
        }

        string? strange = Array.Find(columns, name => !required.Contains(name, StringComparer.Ordinal) && !optional.Contains(name, StringComparer.Ordinal));
        if (strange is not null)
        {
            throw new InputException(file, parser.RawRow, $"the column '{strange}' is not known; the columns are {known}.");
        }

        return columns.Distinct(StringComparer.Ordinal).Count() == columns.Length
            ? columns
            : throw new InputException(file, parser.RawRow, "a column is named twice.");
    }
}
