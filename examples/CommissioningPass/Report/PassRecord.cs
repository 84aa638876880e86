using System.Text.Json;
using PrinterMath.Measurement;

namespace CommissioningPass.Report;

/// <summary>commissioning.json, schema version 0: every entry in SI with its UCUM unit.</summary>
internal static class PassRecord
{
    private const int SchemaVersion = 0;

    internal static void Write(IReadOnlyList<PassStep> steps, string path) => WholeFile.Write(path, stream => Write(steps, stream));

    private static void Write(IReadOnlyList<PassStep> steps, Stream stream)
    {
        using var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" });
        json.WriteStartObject();
        json.WriteNumber("schemaVersion", SchemaVersion);
        json.WriteStartArray("steps");
        foreach (PassStep step in steps)
        {
            Write(step, json);
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.Flush();
        stream.Write("\n"u8);
    }

    private static void Write(PassStep step, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("name", step.Name);
        json.WriteStartArray("entries");
        foreach (PassEntry entry in step.Entries)
        {
            Write(entry, json);
        }

        json.WriteEndArray();
        json.WriteStartArray("settings");
        foreach (PassSetting setting in step.Settings)
        {
            json.WriteStartObject();
            json.WriteString("name", setting.Name);
            json.WriteNumber("value", setting.Value);
            json.WriteString("unit", setting.UcumUnit);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("findings");
        foreach ((string about, Finding finding) in step.Findings)
        {
            Write(about, finding, json);
        }

        json.WriteEndArray();
        Write("remarks", step.Remarks, json);
        Write("cautions", step.Cautions, json);
        json.WriteEndObject();
    }

    private static void Write(PassEntry entry, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("name", entry.Name);
        json.WriteNumber("value", entry.Value);
        json.WriteString("unit", entry.UcumUnit);
        json.WriteNumber("standardUncertainty", entry.StandardUncertainty);
        WriteOptional("degreesOfFreedom", double.IsFinite(entry.DegreesOfFreedom) ? entry.DegreesOfFreedom : null, json);
        json.WriteStartObject("interval95");
        json.WriteNumber("lower", entry.Interval.Lower);
        json.WriteNumber("upper", entry.Interval.Upper);
        json.WriteEndObject();
        WriteLimit(entry, json);
        WriteVerdict(entry.Verdict, json);
        json.WriteString("whatToDo", entry.WhatToDo);
        json.WriteEndObject();
    }

    private static void WriteLimit(PassEntry entry, Utf8JsonWriter json)
    {
        if (entry.LimitText is null)
        {
            json.WriteNull("limit");
            return;
        }

        json.WriteStartObject("limit");
        WriteOptional("lower", entry.LowerLimit, json);
        WriteOptional("upper", entry.UpperLimit, json);
        json.WriteEndObject();
    }

    private static void WriteVerdict(IVerdict? verdict, Utf8JsonWriter json)
    {
        if (verdict is null)
        {
            json.WriteNull("verdict");
            return;
        }

        json.WriteStartObject("verdict");
        json.WriteString("conclusion", verdict.Conclusion switch
        {
            Conclusion.Within => "within",
            Conclusion.Outside => "outside",
            _ => "undecided",
        });
        json.WriteNumber("probabilityOfConformity", verdict.ProbabilityOfConformity);
        json.WriteNumber("specificRisk", verdict.SpecificRisk);
        json.WriteString("limitation", verdict.Limitation?.ToString());
        json.WriteEndObject();
    }

    private static void Write(string about, Finding finding, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("about", about);
        json.WriteString("code", finding.Code);
        json.WriteString("severity", finding.Severity switch
        {
            FindingSeverity.Note => "note",
            FindingSeverity.Caution => "caution",
            _ => "blocking",
        });
        json.WriteString("message", finding.Message);
        json.WriteStartArray("numbers");
        foreach (FindingNumber number in finding.Numbers)
        {
            json.WriteStartObject();
            json.WriteString("name", number.Name);
            json.WriteNumber("value", number.Value);
            json.WriteString("unit", number.UcumUnit);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(string name, IReadOnlyList<string> sentences, Utf8JsonWriter json)
    {
        json.WriteStartArray(name);
        foreach (string sentence in sentences)
        {
            json.WriteStringValue(sentence);
        }

        json.WriteEndArray();
    }

    private static void WriteOptional(string name, double? number, Utf8JsonWriter json)
    {
        if (number is { } value)
        {
            json.WriteNumber(name, value);
        }
        else
        {
            json.WriteNull(name);
        }
    }
}
