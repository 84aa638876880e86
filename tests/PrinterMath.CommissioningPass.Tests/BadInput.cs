using System.Globalization;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>A way to spoil the demonstration folder and what the one line about it must say.</summary>
/// <param name="Spoil">What is done to the folder.</param>
/// <param name="Start">How the line must begin: the file and, where there is one, the line.</param>
/// <param name="Rule">What else it must say.</param>
internal sealed record BadInput(Action<PassFolder> Spoil, string Start, string Rule)
{
    internal static readonly Dictionary<string, BadInput> Cases = new()
    {
        ["readings missing"] = new(f => File.Delete(f.PathOf("readings.csv")), "readings.csv: ", "missing"),
        ["probe missing"] = new(f => File.Delete(f.PathOf("probe.csv")), "probe.csv: ", "missing"),
        ["recording missing"] = new(f => File.Delete(f.PathOf("belt-b.wav")), "belt-b.wav: ", "missing"),
        ["readings empty"] = Text("readings.csv", string.Empty, "readings.csv: ", "empty"),
        ["limits empty"] = Text("limits.csv", string.Empty, "limits.csv: ", "empty"),
        ["probe empty"] = Text("probe.csv", string.Empty, "probe.csv: ", "empty"),
        ["probe header alone"] = Text("probe.csv", "x_mm,y_mm,z_mm\n", "probe.csv: ", "no row"),
        ["recording empty"] = Bytes("belt-a.wav", _ => [], "empty"),
        ["column missing"] = Changed("probe.csv", "x_mm,y_mm,z_mm", "x_mm,y_mm,height", "probe.csv, line 1: ", "column z_mm is missing"),
        ["column unknown"] = Changed("probe.csv", "standard_uncertainty_mm", "sigma", "probe.csv, line 1: ", "'sigma' is not known"),
        ["column twice"] = Text("probe.csv", "x_mm,y_mm,z_mm,z_mm\n1,2,3,4\n", "probe.csv, line 1: ", "twice"),
        ["semicolons"] = Text("probe.csv", "x_mm;y_mm;z_mm\n1;2;3\n", "probe.csv, line 1: ", "separated by commas"),
        ["field missing"] = Text("probe.csv", "x_mm,y_mm,z_mm\n0,0,0\n100,0\n", "probe.csv, line 3: ", "2 fields"),
        ["quotation mark astray"] = Text("probe.csv", "x_mm,y_mm,z_mm\n0,0,0\n1\"0,0,0\n", "probe.csv, line 3: ", "quotation mark"),
        ["text for a number"] = Changed("readings.csv", "span_b,177.5,", "span_b,long,", "readings.csv, line 3: ", "value is 'long'; a number"),
        ["number empty"] = Changed("readings.csv", "span_b,177.5,", "span_b,,", "readings.csv, line 3: ", "value is empty"),
        ["decimal comma bare"] = Changed("readings.csv", "span_b,177.5,", "span_b,177,5,", "readings.csv, line 3: ", "decimal comma"),
        ["decimal comma quoted"] = Changed("readings.csv", "span_b,177.5,", "span_b,\"177,5\",", "readings.csv, line 3: ", "decimal point, not a comma"),
        ["not a number"] = Changed("probe.csv", "65,20,-0.075", "65,20,NaN", "probe.csv, line 3: ", "finite"),
        ["infinite"] = Changed("probe.csv", "65,20,-0.075", "65,20,Infinity", "probe.csv, line 3: ", "finite"),
        ["two points"] = Text("probe.csv", "x_mm,y_mm,z_mm\n0,0,0\n100,0,0.1\n", "probe.csv: ", "at least 3"),
        ["points on a line"] = Text(
            "probe.csv", "x_mm,y_mm,z_mm,standard_uncertainty_mm\n0,0,0,0.01\n100,100,0.1,0.01\n200,200,0.3,0.01\n", "probe.csv: ", "one line"),
        ["silent"] = Bytes("belt-a.wav", wave => [.. wave[..44], .. new byte[wave.Length - 44]], "silent"),
        ["truncated"] = Bytes("belt-a.wav", wave => wave[..(wave.Length / 2)], "cut off"),
        ["one byte short"] = Bytes("belt-a.wav", wave => wave[..^1], "cut off"),
        ["header alone"] = Bytes("belt-a.wav", wave => wave[..40], "no data chunk"),
        ["not a recording"] = Bytes("belt-a.wav", _ => "This is a text and no sound at all, of no use."u8.ToArray(), "not a RIFF WAVE"),
        ["not closed"] = Bytes("belt-a.wav", wave => [.. wave[..40], 0, 0, 0, 0, .. wave[44..]], "not closed"),
        ["too short"] = Bytes("belt-a.wav", wave => WaveBytes.Pcm(16, 1, 16000, [.. Enumerable.Range(0, 1600).Select(i => Math.Sin(i * 0.05) / 2)]), "0.2 s"),
        ["sample rate"] = Bytes("belt-a.wav", wave => WaveBytes.Pcm(16, 1, 1000, [.. Enumerable.Range(0, 1600).Select(i => Math.Sin(i * 0.05) / 2)]), "sample rate is 1000 Hz"),
        ["encoding"] = Bytes("belt-a.wav", wave => [.. wave[..20], 7, 0, .. wave[22..]], "PCM or floating point"),
        ["no pluck"] = Bytes("belt-a.wav", _ => WaveBytes.Pcm(16, 1, 16000, [.. Enumerable.Range(0, 32000).Select(i => Math.Sin(i * 0.05) / 2)]), "belt-a.wav"),
        ["span in metres"] = Changed("readings.csv", "span_a,266,", "span_a,0.266,", "readings.csv, line 2: ", "Is the unit right?"),
        ["span a thousand times too long"] = Changed("readings.csv", "span_a,266,mm", "span_a,266,m", "readings.csv, line 2: ", "Is the unit right?"),
        ["mass a thousand times too large"] = Changed("readings.csv", "sample_mass,8.28,g", "sample_mass,8.28,kg", "readings.csv, line 4: ", "Is the unit right?"),
        ["mass a thousand times too small"] = Changed("readings.csv", "sample_mass,8.28,g,0.005,0.01", "sample_mass,8.28,mg,0.005,0.01", "readings.csv, line 4: ", "Is the unit right?"),
        ["density implausible"] = Changed("readings.csv", "sample_length,1031,mm,0.7", "sample_length,20,mm,0.7", "readings.csv, line 4: ", "mass per length"),
        ["unit of another quantity"] = Changed("readings.csv", "span_a,266,mm", "span_a,266,g", "readings.csv, line 2: ", "'g' does not fit span_a"),
        ["no uncertainty"] = Changed("readings.csv", "span_a,266,mm,0.5,0.5", "span_a,266,mm,,", "readings.csv, line 2: ", "greater than zero"),
        ["negative uncertainty"] = Changed("readings.csv", "span_a,266,mm,0.5,0.5", "span_a,266,mm,-0.5,0.5", "readings.csv, line 2: ", "negative"),
        ["uncertainty larger than value"] = Changed("readings.csv", "span_a,266,mm,0.5,", "span_a,266,mm,500,", "readings.csv, line 2: ", "larger than the value"),
        ["quantity unknown"] = Changed("readings.csv", "span_a", "span_c", "readings.csv, line 2: ", "'span_c' is not known"),
        ["quantity twice"] = Changed("readings.csv", "span_b", "span_a", "readings.csv, line 3: ", "first is in line 2"),
        ["quantity missing"] = Changed("readings.csv", "span_b,177.5,mm,0.5,0.5\n", string.Empty, "readings.csv: ", "span_b"),
        ["limits the wrong way round"] = Changed("limits.csv", "belt_tension,25,45,", "belt_tension,45,25,", "limits.csv, line 2: ", "below"),
        ["limit in thousandths"] = Changed("limits.csv", "belt_tension,25,45,", "belt_tension,0.025,0.045,", "limits.csv, line 2: ", "Is the unit right?"),
        ["limit in thousands"] = Changed("limits.csv", "first_layer_spread,,0.15,", "first_layer_spread,,150,", "limits.csv, line 4: ", "Is the unit right?"),
        ["no limit at all"] = Changed("limits.csv", "first_layer_spread,,0.15,", "first_layer_spread,,,", "limits.csv, line 4: ", "lower or an upper"),
        ["flatness with a lower limit"] = Changed("limits.csv", "surface_flatness,,0.1,", "surface_flatness,0.05,0.1,", "limits.csv, line 5: ", "upper limit alone"),
        ["flatness in micrometres"] = Changed("limits.csv", "surface_flatness,,0.1,", "surface_flatness,,100,", "limits.csv, line 5: ", "Is the unit right?"),
        ["heights in micrometres"] = Text("probe.csv", "x_mm,y_mm,z_mm\n0,0,0\n100,0,120\n0,100,80\n100,100,30\n", "probe.csv: ", "Is z_mm in millimetres?"),
        ["heights in metres"] = Text("probe.csv", "x_mm,y_mm,z_mm\n0,0,0\n100,0,0.00012\n0,100,0.00008\n100,100,0.00003\n", "probe.csv: ", "Is z_mm in millimetres?"),
        ["places in metres"] = Text("probe.csv", "x_mm,y_mm,z_mm\n0,0,0\n0.1,0,0.01\n0,0.1,0.01\n0.1,0.1,0.02\n", "probe.csv: ", "in millimetres?"),
        ["places in micrometres"] = Text("probe.csv", "x_mm,y_mm,z_mm\n0,0,0\n100000,0,0.01\n0,100000,0.01\n", "probe.csv, line 3: ", "Is the unit right?"),
        ["thread unknown"] = Changed("screws.csv", "30,30,M3,", "30,30,3 mm,", "screws.csv, line 2: ", "thread is '3 mm'"),
        ["sense unknown"] = Changed("screws.csv", "30,30,M3,below,", "30,30,M3,below,up or ", "screws.csv, line 2: ", "raises, lowers"),
        ["one screw"] = Text("screws.csv", "name,x_mm,y_mm,thread,turned_from,clockwise\nlone,10,10,M4,below,lowers\n", "screws.csv: ", "3 or 4"),
        ["screw twice"] = Changed("screws.csv", "front right", "front left", "screws.csv, line 3: ", "twice"),
        ["screw places in metres"] = Text(
            "screws.csv", "name,x_mm,y_mm,thread,turned_from,clockwise\na,0.03,0.03,M4,below,lowers\nb,0.19,0.03,M4,below,lowers\nc,0.1,0.19,M4,below,lowers\n", "screws.csv: ", "in millimetres?"),
        ["again without its pass"] = Changed("again.csv", "pass,x_mm", "round,x_mm", "again.csv, line 1: ", "column pass is missing"),
        ["again empty"] = Text("again.csv", string.Empty, "again.csv: ", "empty"),
        ["again as the first pass"] = Changed("again.csv", "2,20,20,", "1,20,20,", "again.csv, line 2: ", "whole number from 2"),
        ["again leaves a pass out"] = Lines("again.csv", (i, line) => i == 0 ? line : "3" + line[1..], "again.csv, line 2: ", "follow in order"),
        ["again back to a pass before"] = Lines("again.csv", (i, line) => i is < 15 or > 20 ? line : "3" + line[1..], "again.csv, line 22: ", "3 or 4 is expected"),
        ["again with two points"] = Text("again.csv", "pass,x_mm,y_mm,z_mm\n2,0,0,0\n2,100,0,0.1\n", "again.csv: ", "at least 3"),
        ["again in micrometres"] = Text("again.csv", "pass,x_mm,y_mm,z_mm\n2,0,0,0\n2,100,0,120\n2,0,100,80\n", "again.csv: ", "Is z_mm in millimetres?"),
        ["turned without again"] = new(f => File.Delete(f.PathOf("again.csv")), "turned.csv: ", "again.csv"),
        ["turned before no pass"] = Changed("turned.csv", "2,front left,", "3,front left,", "turned.csv, line 2: ", "from 2 to 2"),
        ["turned a strange screw"] = Changed("turned.csv", "2,front left,", "2,middle,", "turned.csv, line 2: ", "'middle' does not stand in screws.csv"),
        ["turned one screw twice"] = Changed("turned.csv", "2,front right,", "2,front left,", "turned.csv, line 3: ", "add its turns up"),
        ["turned in no sense"] = Changed("turned.csv", "2,front right,clockwise", "2,front right,up", "turned.csv, line 3: ", "clockwise, counterclockwise"),
        ["turned backwards by sign"] = Changed("turned.csv", "2,front right,clockwise,55", "2,front right,clockwise,-55", "turned.csv, line 3: ", "degrees is -55"),
        ["contact empty"] = Text("contact.csv", string.Empty, "contact.csv: ", "empty"),
        ["contact outcome unknown"] = Changed("contact.csv", "0.5,clear", "0.5,perhaps", "contact.csv, line 3: ", "one of clear, touching"),
        ["contact in metres"] = Changed("contact.csv", "0.5,clear", "5000,clear", "contact.csv, line 3: ", "Is the unit right?"),
        ["gauge in metres"] = Lines("readings.csv", (i, line) => line.Replace("gauge_thickness,0.", "gauge_thickness,100.", StringComparison.Ordinal), "readings.csv, line 6: ", "Is the unit right?"),
        ["warming of a strange part"] = Changed("warming.csv", "bed,30,", "plate,30,", "warming.csv, line 3: ", "one of nozzle, bed"),
        ["warming of one part twice"] = Changed("warming.csv", "bed,30,", "nozzle,30,", "warming.csv, line 3: ", "stands twice"),
        ["warming in kelvins"] = Changed("warming.csv", "21,235,2", "294,508,2", "warming.csv, line 2: ", "Is the unit right?"),
        ["warming by a coefficient per kelvin"] = Changed("warming.csv", "nozzle,34,1,19,", "nozzle,34,1,0.000019,", "warming.csv, line 2: ", "expansion_um_m_k is 1.9"),
        ["drive column missing"] = Changed("drive.csv", "quantity,value,unit,", "quantity,value,", "drive.csv, line 1: ", "column unit is missing"),
        ["drive empty"] = Text("drive.csv", string.Empty, "drive.csv: ", "empty"),
        ["drive quantity unknown"] = Changed("drive.csv", "beam_length,", "beam_lenght,", "drive.csv, line 2: ", "'beam_lenght' is not known"),
        ["drive quantity missing"] = Changed("drive.csv", "depth,394,mm,\n", string.Empty, "drive.csv: ", "no row for depth"),
        ["drive quantity twice"] = Changed("drive.csv", "mass_y,", "mass_x,", "drive.csv, line 15: ", "first is in line 14"),
        ["drive text for a number"] = Changed("drive.csv", "acceleration,20,", "acceleration,fast,", "drive.csv, line 12: ", "value is 'fast'; a number"),
        ["drive decimal comma"] = Changed("drive.csv", "mass_x,0.717,", "mass_x,0,717,", "drive.csv, line 14: ", "decimal comma"),
        ["drive mass in grams"] = Changed("drive.csv", "mass_x,0.717,kg,", "mass_x,717,kg,", "drive.csv, line 14: ", "Is the unit right?"),
        ["drive unit of another quantity"] = Changed("drive.csv", "mass_x,0.717,kg,", "mass_x,0.717,mm,", "drive.csv, line 14: ", "'mm' does not fit mass_x"),
        ["drive mass without uncertainty"] = Changed("drive.csv", "mass_x,0.717,kg,0.01", "mass_x,0.717,kg,", "drive.csv, line 14: ", "standard uncertainty greater than zero"),
        ["drive uncertainty larger than value"] = Changed("drive.csv", "mass_x,0.717,kg,0.01", "mass_x,0.717,kg,10", "drive.csv, line 14: ", "larger than the value"),
        ["drive length with an uncertainty"] = Changed("drive.csv", "beam_length,416,mm,", "beam_length,416,mm,0.5", "drive.csv, line 2: ", "leave its standard uncertainty empty"),
        ["drive half a tooth"] = Changed("drive.csv", "pulley_teeth,20,", "pulley_teeth,20.5,", "drive.csv, line 10: ", "a whole number"),
        ["drive travel the wrong way round"] = Changed("drive.csv", "travel_x_to,356,", "travel_x_to,50,", "drive.csv, line 6: ", "between travel_x_from and the right end"),
        ["drive travel off the beam"] = Changed("drive.csv", "travel_x_from,60,", "travel_x_from,20,", "drive.csv, line 5: ", "half the carriage"),
        ["drive travel into the motors"] = Changed("drive.csv", "travel_y_from,40,", "travel_y_from,10,", "drive.csv, line 7: ", "motor shafts"),
        ["drive travel into the rear"] = Changed("drive.csv", "travel_y_to,344,", "travel_y_to,390,", "drive.csv, line 8: ", "rear idlers"),
        ["drive lead without strands"] = Changed("drive.csv", "tensioner_strands,2,1,\n", string.Empty, "drive.csv, line 25: ", "needs a row for tensioner_strands"),
        ["drive turn without a frequency"] = Changed("drive.csv", "frequency_before_a,93.7,Hz,0.2\n", string.Empty, "drive.csv, line 27: ", "needs a row for frequency_before_a"),
        ["drive turn of nothing"] = Changed("drive.csv", "last_turns_a,0.5,", "last_turns_a,0,", "drive.csv, line 27: ", "other than zero"),
        ["acceleration column missing"] = Changed("acceleration.csv", "time_s,", "time_ms,", "acceleration.csv, line 1: ", "column time_s is missing"),
        ["acceleration axis missing"] = Changed("acceleration.csv", "y_m_s2", "y_relative", "acceleration.csv, line 1: ", "y_relative stands alone"),
        ["acceleration without an axis"] = Lines("acceleration.csv", (i, line) => line.Split(',')[0], "acceleration.csv, line 1: ", "column x_m_s2 is missing"),
        ["acceleration alone and dead"] = Lines("acceleration.csv", (i, line) => i == 0 ? "time_s,y_relative" : line.Split(',')[0] + ",3", "acceleration.csv: ", "dead axis"),
        ["acceleration text for a number"] = Lines("acceleration.csv", (i, line) => i == 5 ? "10.1,0,fast,9.8" : line, "acceleration.csv, line 6: ", "y_m_s2 is 'fast'; a number"),
        ["acceleration in milliseconds"] = Numbers("acceleration.csv", row => [row[0] * 1000, row[1], row[2], row[3]], "milliseconds"),
        ["acceleration in g"] = Numbers("acceleration.csv", row => [row[0], row[1] / 9.80665, row[2] / 9.80665, row[3] / 9.80665], "units of g"),
        ["acceleration with a dead axis"] = Numbers("acceleration.csv", row => [row[0], 0.5, row[2], row[3]], "dead axis"),
        ["acceleration at one time"] = Numbers("acceleration.csv", row => [7, row[1], row[2], row[3]], "different times"),
        ["acceleration too short"] = Lines("acceleration.csv", (i, line) => i <= 50 ? line : string.Empty, "acceleration.csv: ", "at least 200"),
        ["acceleration cut off at the tap"] = Lines("acceleration.csv", (i, line) => i <= 210 ? line : string.Empty, "acceleration.csv: ", "of decay are needed"),
        ["wall column missing"] = Changed("walls.csv", "thickness_mm,", "thickness,", "walls.csv, line 1: ", "column thickness_mm is missing"),
        ["wall text for a number"] = Lines("walls.csv", (i, line) => i == 2 ? "thick,0.45,0.2,0.97,0.01,0.005" : line, "walls.csv, line 3: ", "thickness_mm is 'thick'; a number"),
        ["wall in micrometres"] = Lines("walls.csv", (i, line) => i == 2 ? "460,0.45,0.2,0.97,0.01,0.005" : line, "walls.csv, line 3: ", "Is the unit right?"),
        ["wall flow in per cent"] = Lines("walls.csv", (i, line) => line.Replace(",0.97,", ",97,", StringComparison.Ordinal), "walls.csv, line 2: ", "flow is 97"),
        ["wall at two flows"] = Lines("walls.csv", (i, line) => i == 4 ? line.Replace(",0.97,", ",0.98,", StringComparison.Ordinal) : line, "walls.csv, line 5: ", "flow differs from line 2"),
        ["fit column missing"] = Changed("fit.csv", "flow,outcome", "flow,result", "fit.csv, line 1: ", "column outcome is missing"),
        ["fit text for a number"] = Lines("fit.csv", (i, line) => i == 2 ? "much,fits" : line, "fit.csv, line 3: ", "flow is 'much'; a number"),
        ["fit outcome unknown"] = Lines("fit.csv", (i, line) => i == 2 ? "0.96,nearly" : line, "fit.csv, line 3: ", "one of fits, does not fit"),
        ["fit in per cent"] = Lines("fit.csv", (i, line) => i == 2 ? "96,fits" : line, "fit.csv, line 3: ", "Is it a ratio?"),
        ["fit without its limits"] = Changed("limits.csv", "fit_flow,0.88,1.04,1\n", string.Empty, "limits.csv: ", "no row for fit_flow"),
        ["screws on a line"] = Changed("screws.csv", "110,190,", "110,30,", "screws.csv: ", "line"),
    };

    private static BadInput Text(string file, string text, string start, string rule) =>
        new(f => File.WriteAllText(f.PathOf(file), text), start, rule);

    private static BadInput Changed(string file, string from, string to, string start, string rule) =>
        new(f => f.Change(file, from, to), start, rule);

    private static BadInput Lines(string file, Func<int, string, string> change, string start, string rule) =>
        new(f => File.WriteAllLines(f.PathOf(file), File.ReadAllLines(f.PathOf(file)).Select((line, i) => change(i, line))), start, rule);

    private static BadInput Numbers(string file, Func<double[], double[]> change, string rule) => Lines(
        file,
        (i, line) => i == 0 ? line : string.Join(',', change([.. line.Split(',').Select(field => double.Parse(field, CultureInfo.InvariantCulture))]).Select(x => x.ToString("R", CultureInfo.InvariantCulture))),
        file + ": ",
        rule);

    private static BadInput Bytes(string file, Func<byte[], byte[]> spoil, string rule) =>
        new(f => File.WriteAllBytes(f.PathOf(file), spoil(File.ReadAllBytes(f.PathOf(file)))), file + ": ", rule);
}
