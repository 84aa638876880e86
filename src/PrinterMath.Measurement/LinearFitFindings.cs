using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>What a linear fit may say about its data.</summary>
internal static class LinearFitFindings
{
    internal static Finding TooFewReadings(int readings, int coefficients) => new(
        "fit.readings.few",
        FindingSeverity.Blocking,
        Text($"{readings} readings cannot determine {coefficients} coefficients."),
        new FindingNumber("readings", readings, "1"),
        new FindingNumber("coefficients", coefficients, "1"));

    internal static Finding TooFewPlaces(int places, int coefficients) => new(
        "fit.places.few",
        FindingSeverity.Blocking,
        Text($"Readings at {places} different places cannot determine {coefficients} coefficients."),
        new FindingNumber("places", places, "1"),
        new FindingNumber("coefficients", coefficients, "1"));

    internal static Finding ZeroColumn(int column) => new(
        "fit.column.zero",
        FindingSeverity.Blocking,
        Text($"Column {column} of the design is zero for every reading: its coefficient cannot be determined."),
        new FindingNumber("column", column, "1"));

    internal static Finding Dependent(Orthogonalization factor, int first)
    {
        int column = factor.VanishingColumn;
        DoubleDouble[] combination = factor.Combination(column);
        List<int> involved = [.. Enumerable.Range(0, column)
            .Where(j => Math.Abs(combination[j].High) * factor.Norms[j] > 1e-6 * factor.Norms[column])];
        involved.Add(column);
        return first == 1 && involved is [0, _]
            ? new Finding(
                "fit.column.constant",
                FindingSeverity.Blocking,
                Text($"Column {column - 1} of the design is the same for every reading and cannot be told from the intercept."),
                new FindingNumber("column", column - 1, "1"))
            : Dependent(involved, first);
    }

    internal static Finding Dependent(DesignCondition condition, int first) =>
        Dependent([.. Enumerable.Range(0, condition.Weakest.Count).Where(j => Math.Abs(condition.Weakest[j]) > 1e-3).Select(j => j + first)], first);

    internal static Finding PoorCondition(double conditionNumber) => new(
        "fit.condition.poor",
        FindingSeverity.Caution,
        Text($"The columns of the design are nearly dependent (condition number {conditionNumber:G3}): their rounding in the sixteenth digit moves the coefficients in about digit {Math.Max(1, 16 - Math.Ceiling(Math.Log10(conditionNumber)))}."),
        new FindingNumber("conditionNumber", conditionNumber, "1"));

    internal static Finding NoFreedom(int coefficients) => new(
        "fit.freedom.none",
        FindingSeverity.Caution,
        Text($"{coefficients} readings determine {coefficients} coefficients with none left over to show the scatter: without given uncertainties the coefficients have none."),
        new FindingNumber("coefficients", coefficients, "1"));

    internal static Finding NoScatter() => new(
        "fit.scatter.none",
        FindingSeverity.Caution,
        "The readings lie exactly on the model, so the scatter says nothing about their uncertainty.");

    internal static Finding Unchecked(int reading) => new(
        "fit.reading.unchecked",
        FindingSeverity.Caution,
        Text($"Reading {reading} alone determines one coefficient (leverage 1): no other reading checks it."),
        new FindingNumber("reading", reading, "1"));

    internal static Finding OutOfRange() => new(
        "fit.range",
        FindingSeverity.Blocking,
        "A coefficient or its uncertainty is too large for a number of the machine; choose other units.");

    private static Finding Dependent(List<int> involved, int first)
    {
        IEnumerable<string> names = involved.Select(j => j < first ? "the intercept" : Text($"column {j - first}"));
        return new Finding(
            "fit.columns.dependent",
            FindingSeverity.Blocking,
            $"The readings cannot tell these terms of the model apart: {string.Join(", ", names)}.",
            [.. involved.Where(j => j >= first).Select(j => new FindingNumber("column", j - first, "1"))]);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
