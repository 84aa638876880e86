using System.Globalization;
using MathNet.Numerics.RootFinding;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>A hot end with a plastic at a temperature of the block: its limits, each with the budget of its own inputs.</summary>
/// <remarks>
/// A flow Q that solves F(Q, x) = 0 has ∂Q/∂x = −(∂F/∂x)/(∂F/∂Q). The model handed to the propagation is one Newton step in ln Q from the solution, whose first derivatives are exactly these.
/// </remarks>
internal sealed class HotEndAnalysis
{
    /// <summary>Flows between which a solution is sought, in m³/s: a thousandth of a mm³/s to a hundred cm³/s.</summary>
    private const double Least = 1e-12, Most = 1e-4;
    private readonly HotEndData _data;
    private readonly MeltMaterial _material;

    internal HotEndAnalysis(HotEndData data, MeltMaterial material, MeasuredTemperature temperature)
    {
        _data = data;
        _material = material;
        Inputs = [.. InputsOf(data, material, temperature)];
        State = HotEndState.From([.. Inputs.Select(input => input.SiValue)]);
        if (!(State.Block > State.Inlet))
        {
            throw Guard.Out(nameof(temperature), temperature, string.Create(CultureInfo.InvariantCulture, $"above the temperature at the inlet, {State.Inlet - 273.15:0.#} °C"));
        }

        if (!(State.Soft > State.Inlet))
        {
            throw Guard.Out(nameof(data.Inlet), data.Inlet, string.Create(CultureInfo.InvariantCulture, $"below the temperature at which the plastic is soft, {State.Soft - 273.15:0.#} °C"));
        }
    }

    internal BudgetInput[] Inputs { get; }

    private HotEndState State { get; }

    internal static TemperatureNeed TemperatureFor(HotEndData data, Measured<VolumeFlow> flow, MeltMaterial material)
    {
        // The temperature of the block is the answer; anything above the inlet serves as a start.
        var any = MeasuredTemperature.FromKelvins(Math.Max(material.SoftAt.Value.Kelvins, data.Inlet.Value.Kelvins) + 100, 0);
        var analysis = new HotEndAnalysis(data, material, any);
        double left = analysis.State.CenterMissing(flow.SiValue);
        if (left > 0.99)
        {
            return new TemperatureNeed(null, [new Finding(
                MeltFindings.CenterStaysCold,
                FindingSeverity.Blocking,
                string.Create(CultureInfo.InvariantCulture, $"At {flow.SiValue * 1e9:G3} mm³/s the centre takes on only {(1 - left) * 100:0.#} % of the difference to the block: no temperature serves."),
                new FindingNumber("flow", flow.SiValue, "m3/s"),
                new FindingNumber("unaccomplished", left, "1"))]);
        }

        Measured<double> kelvins = Propagation.FirstOrder<double>(
            x =>
            {
                HotEndState state = HotEndState.From(x);
                return state.Inlet + ((state.Soft - state.Inlet) / (1 - state.CenterMissing(x[HotEndState.Count])));
            },
            [.. analysis.Inputs, BudgetInput.Of("flow", flow)]).Result;
        return new TemperatureNeed(MeasuredTemperature.FromKelvins(kelvins.SiValue, kelvins.SiStandardUncertainty, kelvins.DegreesOfFreedom), []);
    }

    internal MeltLimit LargestFlow()
    {
        double u = Math.Sqrt(Square(3) + Square(4)), above = State.Block - State.Soft;
        if (above <= 2 * u || State.Missing < 1e-6)
        {
            return new MeltLimit([], [new Finding(
                MeltFindings.BlockTooCold,
                FindingSeverity.Blocking,
                string.Create(CultureInfo.InvariantCulture, $"The block at {State.Block - 273.15:0.#} °C is {above:0.#} K above where {_material.Name} gets soft, uncertain by {u:0.#} K: too little to tell a flow."),
                new FindingNumber("above", above, "K"),
                new FindingNumber("uncertainty", u, "K"))]);
        }

        List<FlowLimit> limits = [new(LimitKind.Melt, Propagation.FirstOrder<VolumeFlow>(x => HotEndState.From(x).MeltFlow(), Inputs))];
        List<Finding> findings = [];
        if (_data.Power is { } power && Solve(flow => State.Power(flow) / power.SiValue) is > 0 and < double.PositiveInfinity and { } melted)
        {
            limits.Add(new FlowLimit(LimitKind.HeaterPower, Step(
                melted, [.. Inputs, BudgetInput.Of("heater power", power)], (flow, x) => HotEndState.From(x).Power(flow) / x[HotEndState.Count])));
        }

        if (_data.Path is { } path)
        {
            Forces(path, limits, findings);
        }

        return findings.Any(finding => finding.Severity == FindingSeverity.Blocking)
            ? new MeltLimit([], findings)
            : new MeltLimit(limits, findings.Concat(Close(limits)));
    }

    private static IEnumerable<BudgetInput> InputsOf(HotEndData data, MeltMaterial material, MeasuredTemperature temperature)
    {
        yield return BudgetInput.Of("heated length", data.HeatedLength);
        yield return BudgetInput.Of("filament diameter", data.FilamentDiameter);
        yield return BudgetInput.Of("inlet temperature", data.Inlet);
        yield return BudgetInput.Of("block temperature", temperature);
        yield return BudgetInput.Of("softening temperature", material.SoftAt);
        yield return BudgetInput.Of("density", material.Density);
        yield return BudgetInput.Of("specific heat", material.SpecificHeat);
        yield return BudgetInput.Of("conductivity", material.Conductivity);
        yield return BudgetInput.Of("heat of melting", material.LatentHeat ?? Measured.Exact(SpecificEnergy.Zero));
        yield return BudgetInput.Of("contact with the block", data.Contact ?? Measured.Exact(HeatTransferCoefficient.Zero));
    }

    /// <summary>The flow at which a rising ratio is 1; 0 when the ratio is above 1 from the start, infinite when it never gets there.</summary>
    private static double Solve(Func<double, double> ratio)
    {
        double low = Math.Log(Least), high = Math.Log(Most);
        double Logarithm(double logFlow) => Math.Log(Math.Min(ratio(Math.Exp(logFlow)), 1e30));
        return Logarithm(low) >= 0 ? 0 : Logarithm(high) <= 0 ? double.PositiveInfinity : Math.Exp(Brent.FindRoot(Logarithm, low, high, 1e-12, 200));
    }

    private static UncertaintyBudget<VolumeFlow> Step(double flow, BudgetInput[] inputs, RatioModel ratio)
    {
        const double H = 1e-4;
        double[] x = [.. inputs.Select(input => input.SiValue)];
        double slope = Math.Log(ratio(flow * Math.Exp(H), x) / ratio(flow * Math.Exp(-H), x)) / (2 * H);
        return Propagation.FirstOrder<VolumeFlow>(at => flow * Math.Exp(-Math.Log(ratio(flow, at)) / slope), inputs);
    }

    private static IEnumerable<Finding> Close(List<FlowLimit> limits)
    {
        FlowLimit[] sorted = [.. limits.OrderBy(limit => limit.Flow.SiValue)];
        foreach (FlowLimit other in sorted.Skip(1))
        {
            double apart = other.Flow.SiValue - sorted[0].Flow.SiValue;
            double u = Math.Sqrt(Math.Pow(other.Flow.SiStandardUncertainty, 2) + Math.Pow(sorted[0].Flow.SiStandardUncertainty, 2));
            if (apart < 1.645 * u)
            {
                yield return new Finding(
                    MeltFindings.LimitsClose,
                    FindingSeverity.Note,
                    string.Create(CultureInfo.InvariantCulture, $"{other.Kind} may bind as well as {sorted[0].Kind}: {other.Flow.SiValue * 1e9:G3} against {sorted[0].Flow.SiValue * 1e9:G3} mm³/s."),
                    new FindingNumber("flow", other.Flow.SiValue, "m3/s"),
                    new FindingNumber("binding", sorted[0].Flow.SiValue, "m3/s"));
            }
        }
    }

    private void Forces(MeltPath path, List<FlowLimit> limits, List<Finding> findings)
    {
        if (_data.Drive is not { } drive)
        {
            return;
        }

        if (_material.Viscosity is not { } viscosity)
        {
            findings.Add(new Finding(
                MeltFindings.ViscosityUnknown, FindingSeverity.Caution, $"No viscosity of {_material.Name} is known, so that no force was checked."));
            return;
        }

        BudgetInput[] geometry = [.. path.GeometryInputs()];
        BudgetInput[] common = [.. Inputs, BudgetInput.Of("viscosity", Measured<double>.FromSi(1, viscosity.RelativeStandardUncertainty)), BudgetInput.Of("friction", drive.Friction), .. geometry];
        double tightest = double.PositiveInfinity;
        foreach (DriveLimit limit in drive.Limits)
        {
            BudgetInput[] inputs = [.. common, BudgetInput.Of($"{limit.Kind} force", limit.Force)];
            double[] x = [.. inputs.Select(input => input.SiValue)];
            double flow = Solve(q => Ratio(q, x));
            if (flow == 0)
            {
                findings.Add(new Finding(
                    MeltFindings.ForceSpent,
                    FindingSeverity.Blocking,
                    $"Friction on the way, {drive.Friction}, takes all of the force that the drive has before {limit.Kind} stops it, {limit.Force}.",
                    new FindingNumber("friction", drive.Friction.SiValue, "N"),
                    new FindingNumber("force", limit.Force.SiValue, "N")));
            }
            else if (double.IsFinite(flow))
            {
                limits.Add(new FlowLimit(limit.Kind, Step(flow, inputs, Ratio)));
                tightest = Math.Min(tightest, flow);
            }
        }

        if (double.IsFinite(tightest))
        {
            PressureDrop drop = path.DropAt(Measured.Exact(VolumeFlow.FromCubicMetersPerSecond(tightest)), MeasuredTemperature.FromKelvins(State.MeanTemperature(tightest), 0), viscosity);
            findings.AddRange(drop.Findings);
        }

        double Ratio(double flow, ReadOnlySpan<double> x)
        {
            HotEndState state = HotEndState.From(x);
            double kelvins = state.MeanTemperature(flow), force = x[^1];
            double pressure = viscosity.IsDefined(kelvins) ? x[HotEndState.Count] * path.Pascals(viscosity, flow, kelvins, x.Slice(HotEndState.Count + 2, geometry.Length)) : double.PositiveInfinity;
            return ((pressure * Math.PI / 4 * state.Diameter * state.Diameter) + x[HotEndState.Count + 1]) / force;
        }
    }

    private double Square(int input) => Inputs[input].SiStandardUncertainty * Inputs[input].SiStandardUncertainty;

    private delegate double RatioModel(double flow, ReadOnlySpan<double> x);
}
