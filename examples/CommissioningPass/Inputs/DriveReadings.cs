using PrinterMath.Measurement;
using PrinterMath.Tension;
using UnitsNet;

namespace CommissioningPass.Inputs;

/// <summary>drive.csv, if it is there: a crossed two-motor drive, what is asked of it, and what is known of its parts.</summary>
internal sealed class DriveReadings
{
    internal const string File = "drive.csv";

    private readonly Dictionary<string, (CsvRow Row, double Si, double StandardUncertainty)> _found;

    private DriveReadings(Dictionary<string, (CsvRow Row, double Si, double StandardUncertainty)> found)
    {
        _found = found;
        CheckTravel();
        Layout = CrossedLayout.From(new CrossedDimensions
        {
            BeamLength = LengthOf(DriveKind.BeamLength),
            Depth = LengthOf(DriveKind.Depth),
            CarriageLength = LengthOf(DriveKind.CarriageLength),
            PulleyRadius = PulleyRadius,
            Travel = new HeadTravel(
                HeadPosition.Of(LengthOf(DriveKind.TravelXFrom), LengthOf(DriveKind.TravelYFrom)), HeadPosition.Of(LengthOf(DriveKind.TravelXTo), LengthOf(DriveKind.TravelYTo))),
        });
    }

    internal CrossedLayout Layout { get; }

    internal Acceleration Acceleration => UnitsNet.Acceleration.FromMetersPerSecondSquared(Si(DriveKind.Acceleration));

    internal Speed Speed => UnitsNet.Speed.FromMetersPerSecond(Si(DriveKind.Speed));

    internal Length BeltWidth => LengthOf(DriveKind.BeltWidth);

    private Length PulleyRadius => BeltPulley.PitchRadius(LengthOf(DriveKind.BeltPitch), (int)Si(DriveKind.PulleyTeeth));

    internal static DriveReadings? Read(string folder)
    {
        if (!System.IO.File.Exists(Path.Combine(folder, File)))
        {
            return null;
        }

        var found = new Dictionary<string, (CsvRow Row, double Si, double StandardUncertainty)>(StringComparer.Ordinal);
        foreach (CsvRow row in CsvTable.Read(folder, File, ["quantity", "value", "unit", "standard_uncertainty"]).Rows)
        {
            string quantity = row.Text("quantity");
            DriveKind kind = Array.Find(DriveKind.All, k => k.Quantity == quantity)
                ?? throw row.Fault($"'{quantity}' is not known; the quantities are {string.Join(", ", DriveKind.All.Select(k => k.Quantity))}.");
            if (!found.TryAdd(quantity, (row, Value(row, kind), StandardUncertainty(row, kind))))
            {
                throw row.Fault(FormattableString.Invariant($"{quantity} stands twice; the first is in line {found[quantity].Row.Line}."));
            }
        }

        DriveKind? missing = Array.Find(DriveKind.All, k => k.Needed && !found.ContainsKey(k.Quantity));
        if (missing is not null)
        {
            throw new InputException(File, null, $"there is no row for {missing.Quantity}.");
        }

        foreach ((DriveKind first, DriveKind second) in DriveKind.Pairs.SelectMany(pair => new[] { pair, (pair.Second, pair.First) }))
        {
            if (found.TryGetValue(first.Quantity, out (CsvRow Row, double Si, double StandardUncertainty) one) && !found.ContainsKey(second.Quantity))
            {
                throw one.Row.Fault($"{first.Quantity} needs a row for {second.Quantity}.");
            }
        }

        return new DriveReadings(found);
    }

    internal bool Holds(params DriveKind[] kinds) => Array.TrueForAll(kinds, kind => _found.ContainsKey(kind.Quantity));

    internal double Si(DriveKind kind) => _found[kind.Quantity].Si;

    internal Length LengthOf(DriveKind kind) => Length.FromMeters(Si(kind));

    internal Measured<T> Of<T>(DriveKind kind)
        where T : struct =>
        Measured<T>.FromSi(Si(kind), _found[kind.Quantity].StandardUncertainty);

    /// <summary>Null when the file does not hold it.</summary>
    internal Measured<T>? Optional<T>(DriveKind kind)
        where T : struct =>
        Holds(kind) ? Of<T>(kind) : null;

    private static double Value(CsvRow row, DriveKind kind)
    {
        double size = kind.Units.SizeOf(row);
        double value = row.Plausible(kind.Quantity, row.Number("value"), kind.Lowest / size, kind.Highest / size, row.Text("unit"));
        bool count = kind == DriveKind.PulleyTeeth || kind == DriveKind.TensionerStrands;
        bool turns = kind == DriveKind.TurnsA || kind == DriveKind.TurnsB;
        return (count && value != Math.Floor(value)) || (turns && value == 0)
            ? throw row.Fault(FormattableString.Invariant($"{kind.Quantity} is {value}; {(count ? "a whole number" : "a number other than zero")} is needed."))
            : value * size;
    }

    private static double StandardUncertainty(CsvRow row, DriveKind kind)
    {
        double? stated = row.OptionalNumber("standard_uncertainty");
        return (kind.Worth, stated) switch
        {
            (DriveWorth.Exact, { }) => throw row.Fault($"{kind.Quantity} is taken as it stands; leave its standard uncertainty empty."),
            (DriveWorth.Measured, null) or (_, <= 0) => throw row.Fault($"{kind.Quantity} needs a standard uncertainty greater than zero."),
            (_, { } u) when u >= Math.Abs(row.Number("value")) => throw row.Fault(FormattableString.Invariant($"the uncertainty, {u:G3} {row.Text("unit")}, is larger than the value. Is its unit that of the value?")),
            _ => (stated ?? 0) * kind.Units.SizeOf(row),
        };
    }

    /// <summary>The head must stay between the idlers and the beam between motors and rear idlers, a pulley's width away.</summary>
    private void CheckTravel()
    {
        double r = PulleyRadius.Meters;
        double half = Si(DriveKind.CarriageLength) / 2;
        Check(DriveKind.TravelXFrom, half + r, Si(DriveKind.BeamLength), "half the carriage and an idler from the left end of the beam");
        Check(DriveKind.TravelXTo, Si(DriveKind.TravelXFrom), Si(DriveKind.BeamLength) - half - r, "between travel_x_from and the right end of the beam, half the carriage and an idler away");
        Check(DriveKind.TravelYFrom, 2 * r, Si(DriveKind.Depth), "a pulley and an idler from the motor shafts");
        Check(DriveKind.TravelYTo, Si(DriveKind.TravelYFrom), Si(DriveKind.Depth) - (2 * r), "between travel_y_from and the rear idlers, an idler away");
    }

    private void Check(DriveKind kind, double above, double below, string where)
    {
        if (Si(kind) <= above || Si(kind) >= below)
        {
            throw _found[kind.Quantity].Row.Fault(FormattableString.Invariant($"{kind.Quantity} is {Si(kind) * 1e3:0.###} mm; it must be more than {above * 1e3:0.#} and less than {below * 1e3:0.#} mm: {where}."));
        }
    }
}
