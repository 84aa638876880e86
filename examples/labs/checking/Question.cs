namespace LabChecking;

/// <summary>One question: the library's answer, how exactly a hand must meet it, known slips, and what the library says beyond.</summary>
public sealed record Question(string Name, string Unit, double Right, double HandTolerance, string Beyond, params Slip[] Slips)
{
    public string Show(double value) => $"{value:G4}{(Unit.Length > 0 ? " " : string.Empty)}{Unit}";

    /// <summary>Null when right, else a hint.</summary>
    public string? Hint(double answer, double tolerance)
    {
        bool Near(double value, double within) => Math.Abs(answer - value) <= within * Math.Abs(value);
        if (!double.IsFinite(answer))
        {
            return "that is not a number; look for a division by zero or the root of a negative number";
        }

        Slip? closest = Slips.Where(slip => Near(slip.Value, Math.Max(tolerance, 1e-3))).MinBy(slip => Math.Abs(answer - slip.Value));
        return Near(Right, tolerance) ? null
            : closest is not null ? closest.Hint
            : $"too {(answer > Right ? "high" : "low")}, and by no slip that is known here; write each unit beside its number";
    }
}
