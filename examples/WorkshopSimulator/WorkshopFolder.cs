using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace WorkshopSimulator;

/// <summary>Writes a visit as the folder of files that the commissioning pass reads, with the truth beside it.</summary>
public static class WorkshopFolder
{
    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    /// <summary>Writes the files.</summary>
    /// <param name="visit">What to write.</param>
    /// <param name="folder">Where; made if it is not there.</param>
    public static void Write(WorkshopVisit visit, string folder)
    {
        ArgumentNullException.ThrowIfNull(visit);
        Directory.CreateDirectory(folder);
        File.WriteAllBytes(Path.Combine(folder, "belt-a.wav"), Wave(visit.RecordingA, visit.SampleRateHertz));
        File.WriteAllBytes(Path.Combine(folder, "belt-b.wav"), Wave(visit.RecordingB, visit.SampleRateHertz));
        WriteTable(folder, "readings.csv", "quantity,value,unit,standard_uncertainty,resolution", visit.Readings.Select(r =>
            Invariant($"{r.Quantity},{r.Value},{r.Unit},{r.StandardUncertainty},{r.Resolution}")));
        WriteTable(folder, "limits.csv", "quantity,lower,upper,unit", visit.Limits.Select(l =>
            Invariant($"{l.Quantity},{l.Lower},{l.Upper},{l.Unit}")));
        WriteTable(folder, "drive.csv", "quantity,value,unit,standard_uncertainty", visit.DriveReadings.Select(r =>
            Invariant($"{r.Quantity},{r.Value},{r.Unit},{r.StandardUncertainty}")));
        WriteTable(folder, "probe.csv", "x_mm,y_mm,z_mm,standard_uncertainty_mm", visit.Probed.Select(p =>
            Invariant($"{p.X},{p.Y},{p.Z:0.000},{p.StandardUncertainty}")));
        WriteTable(folder, "screws.csv", "name,x_mm,y_mm,thread,turned_from,clockwise", visit.Screws.Select(s =>
            Invariant($"{s.Name},{s.X},{s.Y},{s.Thread},{s.TurnedFrom},{s.Clockwise}")));
        File.Delete(Path.Combine(folder, "turned.csv"));
        if (visit.Turned.Count > 0)
        {
            WriteTable(folder, "turned.csv", "before_pass,screw,sense,degrees", visit.Turned.Select(t =>
                Invariant($"{t.BeforePass},{t.Screw},{t.Sense},{t.Degrees}")));
        }

        WriteTable(folder, "again.csv", "pass,x_mm,y_mm,z_mm,standard_uncertainty_mm", visit.ProbedAgain.Select(p =>
            Invariant($"2,{p.X},{p.Y},{p.Z:0.000},{p.StandardUncertainty}")));
        WriteTable(folder, "contact.csv", "height_mm,outcome", visit.ContactTrials.Select(t =>
            Invariant($"{t.HeightMillimetres},{(t.Touches ? "touching" : "clear")}")));
        WriteTable(folder, "warming.csv", "part,length_mm,u_length_mm,expansion_um_m_k,u_expansion_um_m_k,measured_degc,printing_degc,u_degc", visit.Warmed.Select(p =>
            Invariant($"{p.Part},{p.Length},{p.LengthUncertainty},{p.Expansion},{p.ExpansionUncertainty},{p.Measured},{p.Printing},{p.TemperatureUncertainty}")));
        WriteTable(folder, "acceleration.csv", "time_s,x_m_s2,y_m_s2,z_m_s2", visit.Tapped.Select(t =>
            Invariant($"{t.Time:0.000000},{t.X},{t.Y},{t.Z}")));
        WriteTable(folder, "walls.csv", "thickness_mm,bead_width_mm,layer_height_mm,flow,resolution_mm,standard_uncertainty_mm", visit.Walls.Select(w =>
            Invariant($"{w.ThicknessMillimetres},{WallReading.BeadWidthMillimetres},{WallReading.LayerHeightMillimetres},{WallReading.Flow},{WallReading.ResolutionMillimetres},{WallReading.InstrumentMillimetres}")));
        WriteTable(folder, "fit.csv", "flow,outcome", visit.Fits.Select(f =>
            Invariant($"{f.Flow},{(f.Fits ? "fits" : "does not fit")}")));
        string truth = JsonSerializer.Serialize(new { invented = true, visit.Seed, visit.BeltA, visit.BeltB, visit.Bed, visit.Contact, visit.ScrewMoves, visit.BedThen, visit.Head, visit.Extruder, visit.Drive }, Indented);
        File.WriteAllText(Path.Combine(folder, "truth.json"), truth + "\n");
    }

    /// <summary>Mono 16-bit PCM in a RIFF file.</summary>
    private static byte[] Wave(float[] samples, int rate)
    {
        byte[] file = new byte[44 + (2 * samples.Length)];
        Span<byte> head = file;
        "RIFF"u8.CopyTo(head);
        BinaryPrimitives.WriteInt32LittleEndian(head[4..], file.Length - 8);
        "WAVEfmt "u8.CopyTo(head[8..]);
        BinaryPrimitives.WriteInt32LittleEndian(head[16..], 16);
        BinaryPrimitives.WriteInt16LittleEndian(head[20..], 1);
        BinaryPrimitives.WriteInt16LittleEndian(head[22..], 1);
        BinaryPrimitives.WriteInt32LittleEndian(head[24..], rate);
        BinaryPrimitives.WriteInt32LittleEndian(head[28..], 2 * rate);
        BinaryPrimitives.WriteInt16LittleEndian(head[32..], 2);
        BinaryPrimitives.WriteInt16LittleEndian(head[34..], 16);
        "data"u8.CopyTo(head[36..]);
        BinaryPrimitives.WriteInt32LittleEndian(head[40..], 2 * samples.Length);
        for (int i = 0; i < samples.Length; i++)
        {
            BinaryPrimitives.WriteInt16LittleEndian(head[(44 + (2 * i))..], (short)Math.Round(samples[i] * 32768.0));
        }

        return file;
    }

    private static void WriteTable(string folder, string name, string header, IEnumerable<string> rows) =>
        File.WriteAllText(Path.Combine(folder, name), string.Join("\n", rows.Prepend(header)) + "\n", new UTF8Encoding(false));

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
