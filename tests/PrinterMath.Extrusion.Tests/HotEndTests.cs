using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

public sealed class HotEndTests
{
    private static readonly MeltPath Path = MeltPath.Of(
        MeltPassage.Taper("taper", Melts.Exactly(2.0), Melts.Exactly(0.4), Melts.Exactly(2.0)),
        MeltPassage.Cylinder("land", Measured.Of(Length.FromMillimeters(0.4), Length.FromMillimeters(0.01)), Melts.Exactly(0.8)));

    // Q = π·α·L/Fo: Fo = 0.4 leaves 0.158489 at the centre. α = 10⁻⁷ m²/s, L = 20 mm: 15.708 mm³/s; α of k = 0.13, ρ = 1240, c_p = 1800: 9.15 mm³/s. Evaluated outside the project.
    [Theory]
    [Trait("Evidence", "Published")]
    [InlineData(0.13, 1000, 1300, 15.708, 5e-4)]
    [InlineData(0.13, 1240, 1800, 9.15, 5e-3)]
    public void Largest_flow_of_conduction(double conductivity, double density, double heat, double flow, double digits)
    {
        MeltMaterial plastic = Plastic(conductivity, density, heat, soft: 225 - (0.15848877341485948 * 200));
        MeltLimit limit = Bare(20, 1.75).LargestFlow(plastic, Melts.Exactly(225));
        Assert.Equal(LimitKind.Melt, limit.Binding.Kind);
        Assert.Equal(flow, limit.Flow.Value.CubicMillimetersPerSecond(), digits);
    }

    // ρ·Q·c_p·ΔT: 10 mm³/s by 190 K take 4.24 W at ρ = 1240 and c_p = 1800; evaluated outside the project. A long hot end brings all of it to the block's temperature.
    [Fact]
    [Trait("Evidence", "Published")]
    public void Power_into_the_plastic() => Assert.Equal(
        4.24, Bare(2000, 1.75).PowerFor(Melts.Flow(10), Plastic(0.13, 1240, 1800, 160), Melts.Exactly(215)).Result.SiValue, 5e-3);

    // The published law: in the limit of conduction the largest flow does not depend on the diameter.
    [Property(MaxTest = 50)]
    public Property Diameter_drops_out() => Prop.ForAll(Arb.From(Gen.Choose(100, 400)), d =>
    {
        double thin = Bare(20, 1.75).LargestFlow(MeltMaterial.Pla, Block(210)).Flow.SiValue;
        return Math.Abs((Bare(20, d / 100.0).LargestFlow(MeltMaterial.Pla, Block(210)).Flow.SiValue / thin) - 1) < 1e-12;
    });

    [Property(MaxTest = 50)]
    public Property Needed_temperature_and_largest_flow_are_inverse() => Prop.ForAll(Arb.From(Gen.Choose(190, 280)), celsius =>
    {
        MeltMaterial plastic = Plastic(0.13, 1240, 1800, 160);
        Measured<VolumeFlow> flow = Bare(20, 1.75).LargestFlow(plastic, Melts.Exactly(celsius)).Flow;
        return Math.Abs(Bare(20, 1.75).TemperatureFor(Measured.Exact(flow.Value), plastic).Temperature.Value.DegreesCelsius - celsius) < 1e-6;
    });

    [Fact]
    public void Faster_needs_hotter()
    {
        double[] needed = [.. new[] { 2.0, 5, 10, 15, 20 }.Select(flow => Bare(20, 1.75).TemperatureFor(Melts.Flow(flow), MeltMaterial.Pla).Temperature.Value.DegreesCelsius)];
        Assert.Equal(needed.Order(), needed);
        Assert.True(needed[4] > needed[0] + 20);
        TemperatureNeed need = Bare(20, 1.75).TemperatureFor(Melts.Flow(2), MeltMaterial.Pla);
        Assert.Equal(Conclusion.Within, need.Judge(Temperature.FromDegreesCelsius(230)).Conclusion);
        Assert.Equal(Conclusion.Outside, need.Judge(Temperature.FromDegreesCelsius(120)).Conclusion);
    }

    [Fact]
    public void A_flow_far_too_large_has_no_temperature()
    {
        TemperatureNeed need = Bare(20, 1.75).TemperatureFor(Melts.Flow(500), MeltMaterial.Pla);
        Assert.False(need.TryGetTemperature(out _));
        Assert.Equal(MeltFindings.CenterStaysCold, Assert.Throws<IndeterminateException>(() => need.Temperature).Finding!.Code);
    }

    [Fact]
    public void A_film_lowers_the_flow()
    {
        double free = Bare(20, 1.75).LargestFlow(MeltMaterial.Pla, Block(210)).Flow.SiValue;
        HotEndData data = Data(20, 1.75) with { Contact = Measured.Exact(HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(1000)) };
        double film = HotEnd.Of(data).LargestFlow(MeltMaterial.Pla, Block(210)).Flow.SiValue;
        Assert.InRange(film, 0.3 * free, 0.8 * free);
    }

    [Fact]
    public void Each_limit_can_bind()
    {
        Assert.Equal(LimitKind.Melt, Full(Drive(80), 200).Binding.Kind);
        Assert.Equal(LimitKind.HeaterPower, Full(Drive(80), 2).Binding.Kind);
        Assert.Equal(LimitKind.Grip, Full(Drive(6), 200).Binding.Kind);
        Assert.Equal(LimitKind.Buckling, Full(Drive(80) with { FreeLength = Melts.Exactly(50.0), Modulus = Measured.Exact(Pressure.FromGigapascals(3.5)) }, 200).Binding.Kind);
        FilamentDriveData weak = Drive(80) with { EffectiveRadius = Melts.Exactly(5.0), MotorTorque = Measured.Exact(Torque.FromNewtonMeters(0.03)) };
        Assert.Equal(LimitKind.Torque, Full(weak, 200).Binding.Kind);
        Assert.Equal(LimitKind.StatedForce, Full(Drive(80) with { StatedForce = Measured.Exact(Force.FromNewtons(5)) }, 200).Binding.Kind);
    }

    // What the limit says, put back: at that flow and the mean temperature of the melt, pressure and friction take the force.
    [Fact]
    public void The_flow_of_a_force_takes_that_force()
    {
        MeltLimit limit = Full(Drive(10), 200);
        FlowLimit grip = limit.Limits.Single(one => one.Kind == LimitKind.Grip);
        HotEnd hotEnd = HotEnd.Of(Data(20, 1.75));
        Measured<VolumeFlow> flow = Measured.Exact(grip.Flow.Value);
        Temperature mean = hotEnd.MeanTemperature(flow, MeltMaterial.Pla, Block(210)).Value;
        PressureDrop drop = Path.DropAt(flow, MeasuredTemperature.FromKelvins(mean.Kelvins, 0), MeltMaterial.Pla.Viscosity!);
        Assert.Equal(10 - 2, drop.ForceOn(Melts.Exactly(1.75)).Result.SiValue, 1e-6);
    }

    // Sensitivities of the implicit flow against solving again: a force 1 % larger.
    [Fact]
    public void Budget_of_an_implicit_flow()
    {
        FlowLimit Grip(double newtons, double u) => Full(Drive(newtons, u), 200).Limits.Single(one => one.Kind == LimitKind.Grip);
        double slope = (Grip(10.05, 0).Flow.SiValue - Grip(9.95, 0).Flow.SiValue) / 0.1;
        BudgetLine line = Grip(10, 1).Budget.Lines.Single(one => one.Input.Name == "Grip force");
        Assert.Equal(slope, line.SiSensitivity, 1e-3 * slope);
        Assert.Equal("viscosity", Grip(10, 1).Budget.Largest.Input.Name);
    }

    [Fact]
    public void A_wanted_flow_is_judged_by_the_limit_that_conforms_least()
    {
        MeltLimit limit = Full(Drive(80), 200);
        Assert.Equal(Conclusion.Within, limit.Judge(VolumeFlow.FromCubicMetersPerSecond(1e-9)).Conclusion);
        Assert.Equal(Conclusion.Outside, limit.Judge(VolumeFlow.FromCubicMetersPerSecond(100e-9)).Conclusion);
        Verdict<VolumeFlow> open = limit.Judge(limit.Flow.Value);
        Assert.Equal(Conclusion.Undecided, open.Conclusion);
        Assert.Equal(limit.Limits.Min(one => Tolerance.AtLeast(limit.Flow.Value).Judge(one.Budget).ProbabilityOfConformity), open.ProbabilityOfConformity);
    }

    [Fact]
    public void A_block_too_cold_holds_no_answer()
    {
        MeltLimit limit = Bare(20, 1.75).LargestFlow(MeltMaterial.Abs, Block(170));
        Assert.False(limit.TryGetFlow(out _));
        Assert.Equal(MeltFindings.BlockTooCold, Assert.Throws<IndeterminateException>(() => limit.Flow).Finding!.Code);
        Assert.Throws<IndeterminateException>(() => limit.Judge(VolumeFlow.FromCubicMetersPerSecond(1e-9)));
    }

    [Fact]
    public void Friction_that_takes_all_force_holds_no_answer() =>
        Assert.Equal(MeltFindings.ForceSpent, Assert.Single(Full(Drive(1.5), 200).Findings).Code);

    [Fact]
    public void A_plastic_without_viscosity_is_limited_by_heat_alone_and_says_so()
    {
        MeltLimit limit = HotEnd.Of(Data(20, 1.75) with { Path = Path, Drive = FilamentDrive.Of(Drive(80)) }).LargestFlow(MeltMaterial.Petg, Block(240));
        Assert.Equal([LimitKind.Melt], limit.Limits.Select(one => one.Kind));
        Assert.Equal(MeltFindings.ViscosityUnknown, Assert.Single(limit.Findings).Code);
    }

    [Fact]
    public void Time_in_the_hot_end() =>
        Assert.Equal(20 * 2.405281875 / 5, Bare(20, 1.75).ResidenceTime(Melts.Flow(5)).Result.Value.Seconds, 1e-8);

    [Fact]
    public void Hotter_melt_for_the_same_pressure_at_more_flow()
    {
        Measured<VolumeFlow> slow = Melts.Flow(5), fast = Melts.Flow(6);
        var pressure = Measured.Exact(Path.DropAt(slow, Melts.Exactly(200), Melts.Pla).Total.Value);
        Assert.Equal(200, Path.TemperatureFor(slow, pressure, Melts.Pla).Temperature.Value.DegreesCelsius, 1e-6);
        double hotter = Path.TemperatureFor(fast, pressure, Melts.Pla).Temperature.Value.DegreesCelsius;
        Assert.InRange(hotter, 201, 215);
        Assert.Equal(pressure.SiValue, Path.DropAt(fast, MeasuredTemperature.FromKelvins(hotter + 273.15, 0), Melts.Pla).Total.SiValue, 1e-3);
        TemperatureNeed none = Path.TemperatureFor(Melts.Flow(5), Measured.Exact(Pressure.FromPascals(1)), Melts.Pla);
        Assert.Equal(MeltFindings.PressureTooLow, Assert.Throws<IndeterminateException>(() => none.Temperature).Finding!.Code);
        Assert.Equal(MeltFindings.PressureNeverReached, Path.TemperatureFor(Melts.Flow(5), Measured.Exact(Pressure.FromGigapascals(90)), Melts.Pla).Findings[0].Code);
    }

    [Fact]
    public void Refuses_what_cannot_be()
    {
        Assert.Throws<ArgumentException>(() => HotEnd.Of(Data(20, 1.75) with { Drive = FilamentDrive.Of(Drive(80)) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => HotEnd.Of(Data(0, 1.75)));
        Assert.Throws<InvalidOperationException>(() => HotEnd.Of(Data(20, 1.75) with { HeatedLength = default }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Bare(20, 1.75).LargestFlow(MeltMaterial.Pla, Block(20)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Bare(20, 1.75).PowerFor(Melts.Flow(-1), MeltMaterial.Pla, Block(210)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Bare(20, 1.75).TemperatureFor(Melts.Flow(0), MeltMaterial.Pla));
        Assert.Throws<ArgumentOutOfRangeException>(() => HotEnd.Of(Data(20, 1.75) with { Inlet = Melts.Exactly(180) }).LargestFlow(MeltMaterial.Pla, Block(210)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Bare(20, 1.75).LargestFlow(MeltMaterial.Pla, Block(210)).Judge(VolumeFlow.Zero));
    }

    private static MeasuredTemperature Block(double celsius) => MeasuredTemperature.FromKelvins(celsius + 273.15, 2);

    private static HotEndData Data(double millimeters, double diameter) => new()
    {
        HeatedLength = Melts.Exactly(millimeters),
        FilamentDiameter = Melts.Exactly(diameter),
        Inlet = Melts.Exactly(25),
    };

    private static HotEnd Bare(double millimeters, double diameter) => HotEnd.Of(Data(millimeters, diameter));

    private static FilamentDriveData Drive(double newtons, double u = 0) => new()
    {
        FilamentDiameter = Melts.Exactly(1.75),
        Grip = u > 0 ? Measured.Of(Force.FromNewtons(newtons), Force.FromNewtons(u)) : Measured.Exact(Force.FromNewtons(newtons)),
        Friction = Measured.Exact(Force.FromNewtons(2)),
    };

    private static MeltLimit Full(FilamentDriveData drive, double watts) => Full(FilamentDrive.Of(drive), watts);

    private static MeltLimit Full(FilamentDrive drive, double watts) => HotEnd.Of(Data(20, 1.75) with
    {
        Path = Path,
        Drive = drive,
        Power = Measured.Exact(Power.FromWatts(watts)),
    }).LargestFlow(MeltMaterial.Pla, Block(210));

    private static MeltMaterial Plastic(double conductivity, double density, double heat, double soft) => MeltMaterial.Of("invented", new MeltMaterialData
    {
        Density = Measured.Exact(Density.FromKilogramsPerCubicMeter(density)),
        SpecificHeat = Measured.Exact(SpecificEntropy.FromJoulesPerKilogramKelvin(heat)),
        Conductivity = Measured.Exact(ThermalConductivity.FromWattsPerMeterKelvin(conductivity)),
        SoftAt = MeasuredTemperature.FromKelvins(soft + 273.15, 0),
        SolidAt = MeasuredTemperature.FromKelvins(55 + 273.15, 0),
    });
}
