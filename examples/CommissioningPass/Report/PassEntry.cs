using PrinterMath.Measurement;

namespace CommissioningPass.Report;

/// <summary>One result of the pass: the number with its uncertainty, its limit and verdict, and what to do.</summary>
internal sealed class PassEntry
{
    private PassEntry(string name, string label)
    {
        Name = name;
        Label = label;
    }

    /// <summary>Stable dotted name for machines.</summary>
    internal string Name { get; }

    internal string Label { get; }

    /// <summary>Value and standard uncertainty as printed.</summary>
    internal required string Text { get; init; }

    internal required double Value { get; init; }

    internal required string UcumUnit { get; init; }

    internal required double StandardUncertainty { get; init; }

    /// <summary>Infinite when known beyond doubt.</summary>
    internal required double DegreesOfFreedom { get; init; }

    internal required (double Lower, double Upper) Interval { get; init; }

    internal string? LimitText { get; private init; }

    internal double? LowerLimit { get; private init; }

    internal double? UpperLimit { get; private init; }

    /// <summary>Null when no limit is given.</summary>
    internal IVerdict? Verdict { get; private init; }

    internal string? WhatToDo { get; private init; }

    /// <summary>The same entry with an interval that the package states itself instead of the one from the standard uncertainty.</summary>
    internal PassEntry With(double lower, double upper) => new(Name, Label)
    {
        Text = Text,
        Value = Value,
        UcumUnit = UcumUnit,
        StandardUncertainty = StandardUncertainty,
        DegreesOfFreedom = DegreesOfFreedom,
        Interval = (lower, upper),
        LimitText = LimitText,
        LowerLimit = LowerLimit,
        UpperLimit = UpperLimit,
        Verdict = Verdict,
        WhatToDo = WhatToDo,
    };

    internal static PassEntry Of<T>(string name, string label, Measured<T> measured, string? displayUnit = null, string? whatToDo = null)
        where T : struct =>
        Of(name, label, measured, null, displayUnit, whatToDo, null);

    /// <summary>A judged result; <paramref name="limitText"/> stands for a limit that was computed and has more digits than it is worth.</summary>
    internal static PassEntry Judged<T>(string name, string label, Verdict<T> verdict, string? displayUnit = null, string? whatToDo = null, string? limitText = null)
        where T : struct =>
        Of(name, label, verdict.Measured, verdict, displayUnit, whatToDo, limitText);

    private static PassEntry Of<T>(string name, string label, Measured<T> measured, Verdict<T>? verdict, string? displayUnit, string? whatToDo, string? limitText)
        where T : struct
    {
        ExpandedInterval<T> interval = measured.Interval();
        return new PassEntry(name, label)
        {
            Text = measured.ToString(displayUnit is null ? null : "S " + displayUnit),
            Value = measured.SiValue,
            UcumUnit = Measured<T>.UcumUnit,
            StandardUncertainty = measured.SiStandardUncertainty,
            DegreesOfFreedom = measured.DegreesOfFreedom,
            Interval = (Si(interval.Lower), Si(interval.Upper)),
            LimitText = limitText ?? verdict?.Tolerance.ToString(displayUnit, null)
                .Replace("at most", "≤", StringComparison.Ordinal)
                .Replace("at least", "≥", StringComparison.Ordinal),
            LowerLimit = verdict?.Tolerance.Lower is { } lower ? Si(lower) : null,
            UpperLimit = verdict?.Tolerance.Upper is { } upper ? Si(upper) : null,
            Verdict = verdict,
            WhatToDo = whatToDo,
        };
    }

    private static double Si<T>(T quantity)
        where T : struct =>
        Measured.Exact(quantity).SiValue;
}
