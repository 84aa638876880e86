using CommissioningPass.Inputs;
using CommissioningPass.Report;
using PrinterMath.Measurement;
using PrinterMath.Tension;
using UnitsNet;

namespace CommissioningPass.Steps;

/// <summary>What the drive of drive.csv does with the tension: torque to spare, expected axis frequencies, change of scale.</summary>
internal sealed class DriveMotion
{
    private readonly DriveReadings _readings;
    private readonly StepperMotor? _motor;
    private readonly MotorMargin? _margin;
    private readonly AccelerationLimit? _largest;
    private readonly FrequencyRange _expected;
    private readonly Force? _target;

    internal DriveMotion(DriveReadings readings, BeltDrive drive, Force? target)
    {
        _readings = readings;
        _target = target;
        _motor = readings.Holds(DriveKind.Motor) ? Motor(readings) : null;
        if (_motor is not null)
        {
            var options = new MotorMarginOptions { Tension = target is { } force ? Measured.Exact(force) : null };
            _margin = drive.MotorMargin(_motor, readings.Speed, readings.Acceleration, options);
            _largest = drive.LargestAcceleration(_motor, readings.Speed, options);
        }

        _expected = drive.FrequencyOverTravel(new AxisOptions { StiffnessPerWidth = readings.Optional<ForcePerLength>(DriveKind.BeltStiffness), MotorTorque = _motor?.TorqueAtRunCurrent });
    }

    internal IEnumerable<Finding> Findings => _largest?.Findings ?? [];

    internal IEnumerable<PassEntry> Entries(BeltComparison comparison)
    {
        if (_margin is not null)
        {
            Verdict<Torque> reserve = _margin.Verdict;
            Verdict<Acceleration> largest = _largest!.Judge(_readings.Acceleration);
            yield return PassEntry.Of("tension.motor.required", "Torque asked for", _margin.Required.Result);
            yield return PassEntry.Judged("tension.motor.reserve", "Torque to spare", reserve, whatToDo: Advice(reserve));
            yield return PassEntry.Judged("tension.motor.acceleration", "Motors alone give", largest, whatToDo: Advice(largest));
        }

        yield return PassEntry.Of("tension.axis.lowest_frequency", "Lower mode, least", _expected.Lowest.LowestFrequency.Result, whatToDo: $"expected, head at {_expected.Lowest.Head}");
        yield return PassEntry.Of("tension.axis.highest_frequency", "Lower mode, most", _expected.Highest.LowestFrequency.Result, whatToDo: $"expected, head at {_expected.Highest.Head}");
        if (_target is { } target)
        {
            yield return PassEntry.Of("tension.axis.scale_change", "Scale after turning", ScaleChange(comparison, target.Newtons), "%", "longer if positive; check the scale again");
        }
    }

    internal IEnumerable<string> Remarks()
    {
        if (_margin is null)
        {
            DriveKind[] missing = [.. DriveKind.Motor.Where(kind => !_readings.Holds(kind))];
            yield return $"The motors are not judged: {DriveReadings.File} needs {string.Join(", ", missing.Select(kind => kind.Quantity))}.";
        }
        else
        {
            yield return FormattableString.Invariant(
                $"Motors at {_readings.Speed.MillimetersPerSecond:0.#} mm/s in any direction: {_margin}. What a motor gives is an upper envelope; resonances and the driver take from it.");
        }

        DriveKind[] unstated = [.. DriveKind.Loads.Concat(_margin is null ? [] : DriveKind.MotorDetails).Where(kind => !_readings.Holds(kind))];
        if (unstated.Length > 0)
        {
            yield return $"Not stated in {DriveReadings.File}, so common practice takes its place: {string.Join("; ", unstated.Select(kind => $"{kind.Quantity}, {kind.Default}"))}.";
        }

        yield return "Expected frequencies take belts and motors as the only springs: modes that step 4 finds far below come from frame, beam or head.";
    }

    private static StepperMotor Motor(DriveReadings readings) => new(new StepperMotorData
    {
        HoldingTorque = readings.Of<Torque>(DriveKind.HoldingTorque),
        RatedCurrent = Rms(readings, DriveKind.RatedCurrent),
        RunCurrent = readings.Holds(DriveKind.RunCurrent) ? Rms(readings, DriveKind.RunCurrent) : null,
        Resistance = readings.Of<ElectricResistance>(DriveKind.Resistance),
        Inductance = readings.Optional<ElectricInductance>(DriveKind.Inductance),
        SupplyVoltage = ElectricPotential.FromVolts(readings.Si(DriveKind.Voltage)),
        RotorInertia = readings.Optional<MassMomentOfInertia>(DriveKind.RotorInertia),
    });

    private static WindingCurrent Rms(DriveReadings readings, DriveKind kind) => WindingCurrent.FromRms(ElectricCurrent.FromAmperes(readings.Si(kind)));

    private static string Advice<T>(Verdict<T> verdict)
        where T : struct =>
        verdict.Conclusion switch
        {
            Conclusion.Within => "enough",
            Conclusion.Outside => "layers will shift: less acceleration or speed",
            _ => $"{verdict.Limitation}",
        };

    /// <summary>Strain at the target less the strain of the mean of both belts now: (T − (A + B)/2)/EA.</summary>
    private Measured<double> ScaleChange(BeltComparison comparison, double target)
    {
        double width = _readings.BeltWidth.Meters;
        Measured<ForcePerLength> stiffness = _readings.Optional<ForcePerLength>(DriveKind.BeltStiffness)
            ?? Measured.FromRange(ForcePerLength.FromNewtonsPerMillimeter(1500), ForcePerLength.FromNewtonsPerMillimeter(3000));
        return Propagation.FirstOrder<double>(
            x => (target - ((x[0] + x[1]) / 2)) / (width * x[2]),
            [BudgetInput.Of("tension A", comparison.FirstTension.Value), BudgetInput.Of("tension B", comparison.SecondTension.Value), BudgetInput.Of("belt stiffness", stiffness)]).Result;
    }
}
